namespace Ramwright.Hydraulics.Identification;

/// <summary>Places of the unknowns that all parts of a stroke share; those of single builds and pauses follow.</summary>
internal static class Unknown
{
    public const int Filling = 0, LogDelivery = 1, LogChamber = 2, LogBypass = 3, Power = 4, LogWeep = 5, WeepShare = 6, Air = 7, LogSoftness = 8, LogSeal = 9, Volts = 10, LogOhms = 11, VoidShare = 12, Shared = 13;

    /// <summary>Of a build: pump angle at its first row, and the seconds until the dies close, or the pressure at its first row in bar.</summary>
    public const int Angle = 0, Begin = 1, PerBuild = 2;

    /// <summary>Of a pause: pressure at its beginning in bar, what cooling takes in bar, ln of its time constant.</summary>
    public const int Start = 0, Cool = 1, LogCoolSeconds = 2, PerPause = 3;
}
