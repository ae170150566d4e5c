using System.Globalization;

namespace Ramwright.App.Web.Tablet;

/// <summary>Light as the drawing, dark as the blueprint, or as the tablet has it.</summary>
public enum Scheme { AsTablet, Light, Dark }

/// <summary>What this one tablet was told about itself: the size of a millimetre and the scheme. Kept in a cookie.</summary>
/// <param name="PixelsPerMillimetre">CSS pixels; 5.2 stands for 132 pixels per inch.</param>
public sealed record TabletCookie(double PixelsPerMillimetre, Scheme Scheme)
{
    public const string Name = "tablet";

    /// <summary>Width of a bank card, ISO/IEC 7810 ID-1.</summary>
    public const double CardMillimetres = 85.6;

    public const double Least = 2;
    public const double Most = 12;

    public static readonly TabletCookie Standard = new(5.2, Scheme.AsTablet);

    /// <summary>The cookie as written, or the standard where it is absent or makes no sense.</summary>
    public static TabletCookie Of(string? text)
    {
        var parts = text?.Split('_');
        return parts is [var size, var scheme]
            && double.TryParse(size, NumberStyles.Float, CultureInfo.InvariantCulture, out var mm) && mm is >= Least and <= Most
            && Enum.TryParse<Scheme>(scheme, out var asked) && Enum.IsDefined(asked)
            ? new(mm, asked)
            : Standard;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{PixelsPerMillimetre:0.###}_{Scheme}");

    /// <summary>The style sheet of this tablet: nothing where all is standard.</summary>
    public string Css()
    {
        var size = PixelsPerMillimetre == Standard.PixelsPerMillimetre ? "" : string.Create(CultureInfo.InvariantCulture, $"--mm: {PixelsPerMillimetre:0.###}px; ");
        var scheme = Scheme switch { Scheme.Light => "color-scheme: light; ", Scheme.Dark => "color-scheme: dark; ", _ => "" };
        return size + scheme is { Length: > 0 } words ? $":root {{ {words}}}\n" : "/* standard: 5.2 px to the millimetre */\n";
    }
}
