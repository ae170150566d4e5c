namespace Ramwright.Metrology.Text;

/// <summary>Spans of time as a person reads them: <c>4 ms</c>, <c>40 s</c>, <c>2.5 min</c>, <c>1 h 20 min</c>.</summary>
public static class TimeText
{
    /// <summary>Seconds below two minutes, minutes below an hour, then hours and minutes.</summary>
    public static string Show(TimeSpan time)
    {
        var size = time.Duration();
        if (size == TimeSpan.Zero)
            return "0 s";
        if (size < TimeSpan.FromSeconds(1))
            return Shown.Of(time.TotalMilliseconds, "ms", null, 1).ToString();
        if (size < TimeSpan.FromMinutes(2))
            return Shown.Of(time.TotalSeconds, "s", null, size < TimeSpan.FromSeconds(10) ? 2 : 0).ToString();
        if (size < TimeSpan.FromMinutes(59.95))
            return Shown.Of(time.TotalMinutes, "min", null, 1).ToString();
        var minutes = (long)Math.Round(size.TotalMinutes, MidpointRounding.AwayFromZero);
        var hours = Shown.Of(Math.Sign(time.Ticks) * (minutes / 60), "h", 0, 0);
        return minutes % 60 == 0 ? hours.ToString() : hours + " " + Shown.Of(minutes % 60, "min", 0, 0);
    }

    /// <summary>Minutes with one place, for steps and columns: <c>0.3 min</c>.</summary>
    public static string Minutes(TimeSpan time, int? decimals = null) => Shown.Of(time.TotalMinutes, "min", decimals, 1).ToString();
}
