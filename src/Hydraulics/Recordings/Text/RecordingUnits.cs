using System.Collections.Frozen;
using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>A unit as loggers write it. Absolute pressures count from vacuum.</summary>
internal readonly record struct WrittenUnit(Unit Unit, bool Absolute);

/// <summary>Finds units in the many spellings of loggers; capitals, blanks and brackets do not count.</summary>
internal static class RecordingUnits
{
    /// <summary>Standard atmosphere in pascals (ISO 2533; exact by definition).</summary>
    public const double Atmosphere = 101_325;

    public static Unit Seconds { get; } = Known("s");
    public static Unit Milliseconds { get; } = Known("ms");
    public static Unit Microseconds { get; } = new("µs", Dimension.Time, 1e-6);
    public static Unit Bar { get; } = Known("bar");
    public static Unit Psi { get; } = Known("psi");
    public static Unit Kilopascal { get; } = Known("kPa");
    public static Unit Pascal { get; } = Known("Pa");
    public static Unit Ampere { get; } = Known("A");
    public static Unit Milliampere { get; } = Known("mA");

    private static readonly FrozenDictionary<string, WrittenUnit> s_units = Table().ToFrozenDictionary(StringComparer.Ordinal);

    public static WrittenUnit? Find(ReadOnlySpan<char> written)
    {
        if (written.Length is 0 or > 20)
            return null;
        Span<char> key = stackalloc char[20];
        var length = 0;
        foreach (var sign in written)
        {
            if (sign is ' ' or '(' or ')' or '[' or ']' or '.' or '_' or '"' or '<' or '>')
                continue;
            key[length++] = sign switch { 'µ' or 'μ' => 'u', '²' => '2', _ => char.ToLowerInvariant(sign) };
        }

        return s_units.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(key[..length], out var unit) ? unit : null;
    }

    private static IEnumerable<KeyValuePair<string, WrittenUnit>> Table()
    {
        (Unit Unit, string Spellings)[] gauge =
        [
            (Seconds, "s sec secs second seconds sek sekunde sekunden segundos secondes secondi"),
            (Milliseconds, "ms msec msecs millisecond milliseconds millisekunden"), (Microseconds, "us usec usecs microsecond microseconds mikrosekunden"),
            (new("ns", Dimension.Time, 1e-9), "ns nanoseconds"), (Known("min"), "min minutes"),
            (Bar, "bar bars barg barü"), (Known("mbar"), "mbar mbarg"), (Psi, "psi psig lbf/in2 lb/in2 lbs/in2"), (new("ksi", Dimension.Pressure, 1e3 * Psi.Factor), "ksi kpsi"),
            (Known("MPa"), "mpa mpag n/mm2"), (Kilopascal, "kpa kpag"), (new("hPa", Dimension.Pressure, 100), "hpa"), (Pascal, "pa pag n/m2"),
            (new("kgf/cm²", Dimension.Pressure, 98_066.5), "kgf/cm2 kg/cm2 kp/cm2"),
            (Ampere, "a amp amps ampere amperes adc amperios"), (Milliampere, "ma milliamp milliamps madc"), (new("kA", Dimension.Current, 1e3), "ka"),
            (Known("V"), "v volt volts vdc"), (Known("mV"), "mv millivolt millivolts mvdc"),
        ];
        foreach (var (unit, spellings) in gauge)
        {
            foreach (var spelling in spellings.Split(' '))
                yield return new(spelling, new(unit, Absolute: false));
        }

        foreach (var (spelling, unit) in new[] { ("bara", Bar), ("barabs", Bar), ("psia", Psi), ("psiabs", Psi), ("mpaa", Known("MPa")), ("mpaabs", Known("MPa")), ("kpaa", Kilopascal), ("kpaabs", Kilopascal) })
            yield return new(spelling, new(unit, Absolute: true));
    }

    private static Unit Known(string symbol) => UnitTable.Find(symbol) ?? throw new InvalidOperationException($"The table of units has no {symbol}.");
}
