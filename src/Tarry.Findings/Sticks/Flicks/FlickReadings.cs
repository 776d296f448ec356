using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Lines;

namespace Tarry.Findings.Sticks.Flicks;

/// <summary>How a stick comes back: releases are the replicates.</summary>
/// <remarks>
/// rest = centre + lag x direction + error, by least squares over both axes of all releases: a stick whose friction stops it short stands on the
/// side from which it came. The scatter is that of the errors, per axis.
/// </remarks>
internal static class FlickReadings
{
    private const int Fewest = 5;
    private const double Overshoots = 2;
    private const string Name = "releases";

    private static readonly (StickMeasure, StickPart)[] All =
    [
        (StickMeasure.CentreOffset, StickPart.X), (StickMeasure.CentreOffset, StickPart.Y), (StickMeasure.ReturnLag, StickPart.Whole),
        (StickMeasure.ReturnScatter, StickPart.Whole), (StickMeasure.ReleaseOvershoot, StickPart.Whole), (StickMeasure.ReleaseSettling, StickPart.Whole),
    ];

    public static IReadOnlyList<Release> Add(SessionReadings readings, StickRecording recording)
    {
        var releases = Releases.Of(recording);
        if (releases.Count < Fewest)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewReleases, releases.Count, Fewest), All);
            return releases;
        }

        var rounding = RoundingError.Of(Math.Max(recording.X.Step, recording.Y.Step), releases.Average(release => release.RestVariance));
        readings.Add(StickMeasure.ReleaseOvershoot, StickPart.Whole, [.. releases.Select(release => release.Overshoot)], Name, releases.Average(release => release.Blur), Overshoots, hidden: releases.Max(release => release.Hidden));
        readings.Add(StickMeasure.ReleaseSettling, StickPart.Whole, [.. releases.Select(release => release.SettlingMs)], Name);
        if (Fit(releases) is not { } fit)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewDirections, 1, 2), All.AsSpan(0, 4));
            return releases;
        }

        AddFit(readings, releases, fit, rounding);
        return releases;
    }

    private static void AddFit(SessionReadings readings, IReadOnlyList<Release> releases, (double X, double Y, double Lag) fit, double rounding)
    {
        var (n, squares, mean) = (releases.Count, new double[releases.Count], (X: 0.0, Y: 0.0));
        for (var i = 0; i < n; i++)
        {
            var (x, y) = (releases[i].RestX - fit.X - (fit.Lag * releases[i].DirectionX), releases[i].RestY - fit.Y - (fit.Lag * releases[i].DirectionY));
            squares[i] = ((x * x) + (y * y)) * n / ((2 * n) - 3);
            mean = (mean.X + (releases[i].DirectionX / n), mean.Y + (releases[i].DirectionY / n));
        }

        var variance = Moments.Mean(squares);
        var degrees = (2 * n) - 3;
        var spread = 1 - (mean.X * mean.X) - (mean.Y * mean.Y);
        var lagError = Math.Sqrt(variance / n / spread);
        void Found(StickMeasure measure, StickPart part, double value, double error) =>
            readings.Found.Add(new StickReading(measure, part, value, error, degrees, n, Name) { Resolution = variance < rounding * rounding ? rounding : 0, Allowance = rounding });

        Found(StickMeasure.CentreOffset, StickPart.X, fit.X, Math.Sqrt((variance / n) + (mean.X * mean.X * lagError * lagError)));
        Found(StickMeasure.CentreOffset, StickPart.Y, fit.Y, Math.Sqrt((variance / n) + (mean.Y * mean.Y * lagError * lagError)));
        Found(StickMeasure.ReturnLag, StickPart.Whole, fit.Lag, lagError);
        var sheppard = rounding * rounding / 3;
        // Rest positions that are all of one step tell no scatter.
        readings.AddSize(StickMeasure.ReturnScatter, StickPart.Whole, variance > sheppard / 2 ? squares : new double[n], Name, value => Math.Sqrt(Math.Max(value - sheppard, value / 16)));
    }

    private static (double X, double Y, double Lag)? Fit(IReadOnlyList<Release> releases)
    {
        double directionX = 0, directionY = 0, x = 0, y = 0, along = 0;
        foreach (var release in releases)
        {
            directionX += release.DirectionX;
            directionY += release.DirectionY;
            x += release.RestX;
            y += release.RestY;
            along += (release.RestX * release.DirectionX) + (release.RestY * release.DirectionY);
        }

        double n = releases.Count;
        if (1 - (((directionX * directionX) + (directionY * directionY)) / (n * n)) < 0.1)
        {
            return null;
        }

        var solved = LinearEquations.Solve(new[,] { { n, 0, directionX }, { 0, n, directionY }, { directionX, directionY, n } }, [x, y, along]);
        return solved is null ? null : (solved[0], solved[1], solved[2]);
    }
}
