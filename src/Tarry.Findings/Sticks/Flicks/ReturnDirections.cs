using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Flicks;

/// <summary>Sorts the releases of a condition by the direction from which the stick came: eight, 45 degrees apart.</summary>
internal static class ReturnDirections
{
    /// <summary>The directions that have a release, counter-clockwise from right.</summary>
    /// <param name="sessions">The releases of each session.</param>
    public static IReadOnlyList<ReturnDirection> Of(IReadOnlyList<IReadOnlyList<Release>> sessions) =>
    [
        .. sessions.SelectMany((releases, session) => releases.Select(release => (Session: session, Release: release)))
            .GroupBy(entry => Sector(entry.Release))
            .OrderBy(group => group.Key)
            .Select(group => Of(45 * group.Key, [.. group.GroupBy(entry => entry.Session).Select(session => session.Select(entry => entry.Release).ToList())])),
    ];

    private static ReturnDirection Of(double degrees, IReadOnlyList<IReadOnlyList<Release>> sessions)
    {
        IReadOnlyList<IReadOnlyList<double>> Along(Func<Release, double> axis) => [.. sessions.Select(releases => releases.Select(axis).ToList())];
        var (x, y) = (Along(release => release.RestX), Along(release => release.RestY));
        return new ReturnDirection(
            degrees,
            sessions.Count,
            [.. sessions.SelectMany(releases => releases).Select(release => (release.RestX, release.RestY))],
            x.Average(values => values.Average()),
            y.Average(values => values.Average()),
            MeanHalfWidth.Of(x),
            MeanHalfWidth.Of(y));
    }

    private static int Sector(Release release) => (int)Math.Round(Math.Atan2(release.DirectionY, release.DirectionX) / (Math.PI / 4)) & 7;
}
