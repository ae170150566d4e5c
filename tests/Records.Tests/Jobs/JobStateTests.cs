namespace Ramwright.Records.Tests.Jobs;

/// <summary>Each test is a short history of a job. All figures invented.</summary>
public sealed partial class JobStateTests
{
    [Fact]
    public void A_job_goes_its_route_and_ends_released() => JobScript.Play("""
        open
        = station Arrive
        safe battery-removed
        safe pressure-released
        = done battery-removed pressure-released
        station Find
        see pressure-decays
        station Plan
        plan cap-nut ram+seal-ram
        quote
        = answer none
        answer yes
        = answer yes
        station Strip
        step 1
        = strip-next 2
        step 2
        = strip-next none
        = done battery-removed cap-nut pressure-released ram
        = owed seal-ram
        station Rebuild
        rebuild seal-ram! ram cap-nut pressure-released battery-removed
        fit 1
        = owed
        = rebuild-next 2
        fit 2
        fit 3
        fit 4
        fit 5
        = done
        station Set
        peak 650
        turn 12/12
        peak 699
        lock
        station Prove
        series 3
        run 700
        run 701
        run 699
        close conforms
        station Release
        end Released
        = open no
        = route Arrive Find Plan Strip Rebuild Set Prove Release
        """);

    [Fact]
    public void A_corrected_sign_off_no_longer_counts_and_stays_readable() => JobScript.Play("""
        open
        plan cap-nut ram+seal-ram
        step 1
        step 2
        = signed 1:ada-fenn:08:03:3 2:ada-fenn:08:04:4
        correct 4 wrong tool on the bench
        = strip-next 2
        = done cap-nut
        = owed
        = corrected 4
        = entries 5
        step 2
        = done cap-nut ram
        refused already-corrected: correct 4 again
        """);

    [Fact]
    public void A_correction_that_was_a_slip_is_corrected_itself() => JobScript.Play("""
        open
        plan cap-nut ram
        step 1
        correct 3 slip
        = strip-next 1
        correct 4 it was right after all
        = strip-next 2
        = corrected 4
        """);

    [Fact]
    public void A_correction_needs_a_reason_and_an_entry_of_this_job() => JobScript.Play("""
        open
        note left-hand thread
        refused no-reason: correct 2
        refused no-such-entry: correct 9 no
        refused not-correctable: correct 1 another customer
        """);

    [Fact]
    public void A_step_is_signed_once_and_only_against_the_plan_that_stands() => JobScript.Play("""
        open
        refused step-not-in-plan: step 1
        plan cap-nut ram
        step 1
        refused step-is-signed: step 1
        refused step-not-in-plan: step 3
        plan spring
        = strip-next 1
        = done cap-nut
        step 1
        = done cap-nut spring
        """);

    [Fact]
    public void A_unit_brings_its_parts_back_together() => JobScript.Play("""
        open
        plan ram rod+seal-rod
        step 1
        step 2
        rebuild ram+rod
        fit 1
        = done
        = owed seal-rod
        refused step-is-signed: fit 1
        refused step-not-in-plan: fit 2
        """);

    [Fact]
    public void A_full_run_puts_the_pack_back_on_so_that_the_next_plan_takes_it_off_again() => JobScript.Play("""
        open
        safe battery-removed
        plan cap-nut
        step 1
        = done battery-removed cap-nut
        rebuild cap-nut
        fit 1
        = done battery-removed
        peak 650
        = done
        = safe battery-removed
        """);

    [Fact]
    public void The_screw_is_counted_from_as_found_and_a_turn_undoes_the_lock() => JobScript.Play("""
        open
        peak 650
        turn 14/12
        peak 702
        turn -1/12
        peak 699
        = screw 13/12
        = runs 0/12:650 14/12:702 13/12:699
        lock
        = locked yes
        turn 1/12
        = locked no
        correct 8 never turned it
        = locked yes
        = screw 13/12
        """);

    [Fact]
    public void A_void_run_keeps_its_number_and_another_takes_its_place() => JobScript.Play("""
        open
        series 3
        run 700
        run 640
        refused no-reason: void 2
        void 2 trigger let go
        refused run-is-void: void 2 again
        refused no-such-run: void 7 what run
        run 701
        = full no
        = next-run 4
        run 702
        = full yes
        = peaks 700 701 702
        refused series-full: run 703
        """);

    [Fact]
    public void A_series_keeps_its_device_its_plan_and_its_own_runs() => JobScript.Play("""
        open
        refused series-not-open: run 700
        refused planned-runs: series 1
        series 2
        refused series-is-open: series 2
        refused other-device: run-on FC-2
        run 700
        refused verdict-of-other-runs: close undecided 2
        refused not-correctable: correct 3 it was low
        refused series-is-open: turn 1/12
        refused series-is-open: peak 700
        refused series-is-open: end NotProven
        close undecided
        = proof Undecided
        series 2
        """);
}
