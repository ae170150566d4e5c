using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Tests.Store;

namespace Ramwright.Records.Tests.House;

public sealed class HouseStateTests
{
    private static readonly InstrumentId Gauge = InstrumentId.Parse("PG-1");

    private static HouseState After(params HouseEvent[] events) => HouseState.Fold(events.Select((e, i) =>
        new Entry<HouseEvent>(new(i + 1), DateTimeOffset.UnixEpoch, LedgerBench.Ada, e)));

    private static InstrumentCalibrated Calibrated(int year) =>
        new(Gauge, new(year, 6, 1), new(year + 1, 6, 1), $"K-{year}", "a made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2.5)));

    [Fact]
    public void The_last_word_on_a_person_counts_and_the_name_stays_on_what_was_signed()
    {
        var house = After(
            new PersonRegistered(LedgerBench.Tom, "Tom Sallow", "technician", MayAuthoriseRelease: false),
            new PersonRegistered(LedgerBench.Tom, "Tom Sallow", "technician", MayAuthoriseRelease: true, Works: false));
        Assert.True(house.Find(LedgerBench.Tom)!.MayAuthoriseRelease);
        Assert.False(house.Find(LedgerBench.Tom)!.Works);
        Assert.Equal("Tom Sallow", house.NameOf(LedgerBench.Tom));
        Assert.Equal("ada-fenn", house.NameOf(LedgerBench.Ada));
    }

    [Fact]
    public void The_latest_calibration_counts_in_whatever_order_they_were_entered()
    {
        var instrument = After(
            Calibrated(2025),
            new InstrumentRegistered(Gauge, "gauge", InstrumentKind.PortGauge, MeasuredKind.Pressure),
            Calibrated(2024)).Find(Gauge)!;
        Assert.Equal("K-2025", instrument.Calibration!.Certificate);
        Assert.Equal("gauge", instrument.Facts.Name);
        Assert.Equal(2, instrument.Calibrations.Count);
    }

    [Theory]
    [InlineData(2026, 6, 1, false)]
    [InlineData(2026, 6, 2, true)]
    public void An_instrument_is_relied_on_up_to_and_on_its_last_day(int year, int month, int day, bool due) =>
        Assert.Equal(due, After(Calibrated(2025)).Find(Gauge)!.IsDueOn(new(year, month, day)));

    [Fact]
    public void A_house_is_set_up_once_its_settings_were_given()
    {
        Assert.False(HouseState.Empty.IsSetUp);
        Assert.True(After(new SettingsChanged(HouseSettings.Unset)).IsSetUp);
    }
}
