using CsCheck;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;

namespace Ramwright.Records.Tests.Jobs;

public sealed partial class JobStateTests
{
    [Fact]
    public void Work_after_a_proof_takes_its_word_away() => JobScript.Play("""
        open
        series 2
        run 700
        run 700.5
        close conforms
        = proof Conforms
        note nice
        = proof Conforms
        turn 1/12
        = proof none
        refused release-needs-proof: end Released
        series 2
        run 701
        run 702
        close conforms
        end Released
        """);

    [Fact]
    public void Only_a_conforming_proof_releases_the_other_ends_need_none() => JobScript.Play("""
        open
        refused release-needs-proof: end Released
        series 2
        run 650
        run 651
        close does-not-conform
        refused release-needs-proof: end Released
        end NotProven
        refused job-has-ended: peak 700
        refused job-has-ended: end Retired
        note still readable
        correct 6 ended the wrong job
        = open yes
        """);

    [Fact]
    public void A_job_goes_back_with_a_reason_and_what_was_recorded_stays() => JobScript.Play("""
        open
        station Prove
        series 2
        run 650
        run 651
        close does-not-conform
        refused no-reason: station Set
        refused same-station: station Prove
        station Set because mean 30 bar low
        = station Set
        = route Arrive Prove Set
        = peaks 650 651
        """);

    [Fact]
    public void A_tool_above_its_maximum_is_quarantined_until_its_frame_was_inspected() => JobScript.Play("""
        open
        refused not-quarantined: lift
        peak 738
        quarantine 738
        refused in-quarantine: peak 700
        refused in-quarantine: series 12
        refused in-quarantine: end Released
        refused not-correctable: correct 3 the gauge lied
        turn -3/12
        lift
        = quarantine no
        peak 700
        """);

    [Fact]
    public void Papers_and_quotes_have_numbers_of_their_own() => JobScript.Play("""
        open
        = next-quote SM-0417-Q1
        refused no-quote: answer yes
        quote
        answer no
        quote
        = answer none
        = next-quote SM-0417-Q3
        refused number-taken: quote SM-0417-Q1
        refused number-of-another-job: quote SM-0418-Q1
        = next-paper SM-0417-P1
        paper ProofReport
        = next-paper SM-0417-P2
        refused number-taken: paper ProofReport SM-0417-P1
        refused not-correctable: correct 5 typing error
        """);

    [Fact]
    public void A_job_is_opened_once_and_first() => JobScript.Play("""
        refused job-not-open: note hello
        open
        refused job-is-open: open
        """);

    [Fact]
    public void Correcting_any_later_entries_is_as_if_they_had_never_been() => Gen.Int[0, 6].Array[1, 12].SelectMany(kinds => Gen.Bool.Array[kinds.Length].Select(drop => (kinds, drop))).ForAll(
        sample =>
        {
            var (kinds, drop) = sample;
            var full = kinds.Aggregate(Begun(), (s, kind) => s.After(JobScript.Entry(s, Event(kind))));
            var first = Begun().Version.Value + 1;
            for (var i = 0; i < kinds.Length; i++)
            {
                if (drop[i])
                    full = full.After(JobScript.Entry(full, new EntryCorrected(new(first + i), "slip")));
            }

            var kept = full.History.Where(e => e.What is not EntryCorrected && !full.Corrected.Contains(e.Number));
            var never = JobState.Fold(full.Id, kept) with { Corrected = full.Corrected };
            Assert.Equal(JobScript.Summary(never), JobScript.Summary(full));
        },
        iter: 500);

    private static JobState Begun() => JobScript.Play("open\nplan a b+s c\nrebuild a b c");

    private static JobEvent Event(int kind) => kind switch
    {
        0 => new StripStepSigned(0, new("a"), null, null),
        1 => new StripStepSigned(1, new("b"), null, null),
        2 => new RebuildStepSigned(0, null, null, [], null),
        3 => new ReliefTurned(Metrology.Quantities.Angle.FromTurns(0.25)),
        4 => new SettingPeakRead(Metrology.Quantities.Pressure.FromBar(700), null),
        5 => new ReliefLocked(),
        _ => new NoteWritten(Station.Strip, "n"),
    };
}
