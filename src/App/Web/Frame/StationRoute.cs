using System.Collections.Immutable;

namespace Ramwright.App.Web.Frame;

/// <summary>How a job stands towards a station. The page being looked at may be another than the one the job is at.</summary>
public enum StopState { Passed, Here, Ahead, Skipped }

/// <summary>One disc on the route.</summary>
/// <param name="Number">1 to 9.</param>
/// <param name="Link">Null where there is nothing to see yet.</param>
/// <param name="Seen">This is the page being looked at.</param>
public sealed record Stop(int Number, string Name, StopState State, string? Link, bool Seen);

/// <summary>The nine stations, along the side of a wide sheet and the top of a narrow one.</summary>
public sealed record StationRoute(ImmutableArray<Stop> Stops);
