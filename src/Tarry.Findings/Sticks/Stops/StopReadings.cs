using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Stops;

/// <summary>Angular errors at stops of known angle: rounds of visits are the replicates, the stated uncertainty of an angle is added to each.</summary>
internal static class StopReadings
{
    // A jig whose angles nobody states a limit for: half a degree, taken as even.
    private const double Unstated = 0.5 / 1.7320508075688772;
    private const int FewestStops = 3;
    private const int FewestVisits = 2;
    private const double LeastAgreement = 0.7;
    private const string Name = "visits of each stop";

    private static readonly (StickMeasure, StickPart)[] Both = [(StickMeasure.AngularError, StickPart.Whole), (StickMeasure.AngularRotation, StickPart.Whole)];

    public static SessionStops? Add(SessionReadings readings, StickRecording recording)
    {
        if (recording.AnglesDeg.Length == 0)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoStimulus), Both);
            return null;
        }

        var stops = StopVisits.Of(recording);
        var uncertainty = recording.Setup.StimulusUncertainty ?? Unstated;
        var rounds = stops.Count == 0 ? 0 : stops.Min(stop => stop.Errors.Count);
        if (stops.Count < FewestStops)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewStops, stops.Count, FewestStops), Both);
        }
        else if (rounds < FewestVisits)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.TooFewVisits, rounds, FewestVisits), Both);
        }
        else if (Agreement(stops) < LeastAgreement)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.StopsDisagree), Both);
        }
        else
        {
            Add(readings, recording, stops, rounds, uncertainty);
        }

        return new SessionStops(stops, uncertainty);
    }

    // The mean cosine of the stops' errors: 1 where none errs, about 0 where the stick was turned the other way or angles were counted from another direction.
    private static double Agreement(IReadOnlyList<(double Degrees, IReadOnlyList<double> Errors)> stops) =>
        stops.Average(stop => Math.Cos(stop.Errors.Average() * Math.PI / 180));

    // Which stop errs most is told by the other rounds, how much by the round itself: the largest of noisy errors would be too large.
    private static void Add(SessionReadings readings, StickRecording recording, IReadOnlyList<(double Degrees, IReadOnlyList<double> Errors)> stops, int rounds, double uncertainty)
    {
        var (worst, rotation) = (new double[rounds], new double[rounds]);
        for (var round = 0; round < rounds; round++)
        {
            rotation[round] = stops.Average(stop => stop.Errors[round]);
        }

        // A stick that lags is turned against the way of its round as a whole: a round there and one back would hide the other's worst stop.
        var mean = rotation.Average();
        double Levelled(IReadOnlyList<double> errors, int round) => errors[round] - rotation[round] + mean;
        for (var round = 0; round < rounds; round++)
        {
            var (place, greatest) = (0, double.NegativeInfinity);
            for (var stop = 0; stop < stops.Count; stop++)
            {
                var others = Enumerable.Range(0, rounds).Where(other => other != round).Average(other => Levelled(stops[stop].Errors, other));
                (place, greatest) = Math.Abs(others) > Math.Abs(greatest) || double.IsInfinity(greatest) ? (stop, others) : (place, greatest);
            }

            worst[round] = Math.Sign(greatest) * Levelled(stops[place].Errors, round);
        }

        // What one stop scatters between visits all do; pooled, two rounds suffice.
        var pooled = stops.Average(stop => Moments.Variance([.. stop.Errors.Take(rounds)]));
        var degrees = stops.Count * (rounds - 1);
        var rounded = Math.Atan(Math.Sqrt(2) * Math.Max(recording.X.Step, recording.Y.Step) / 100) * 180 / Math.PI;
        var chosen = NormalDistribution.Quantile(1 - (0.025 / stops.Count));
        AddWithStops(readings, StickMeasure.AngularError, worst, Math.Sqrt(pooled / rounds), degrees, uncertainty, (chosen * uncertainty) + (rounded / 2), rounded / 2, stops.Count);
        AddWithStops(readings, StickMeasure.AngularRotation, rotation, Math.Sqrt(pooled / rounds / stops.Count), degrees, uncertainty / Math.Sqrt(stops.Count), 0, rounded / 4, 1);
    }

    private static void AddWithStops(SessionReadings readings, StickMeasure measure, double[] values, double error, int degrees, double uncertainty, double allowance, double rounding, int chosen)
    {
        readings.Found.Add(new StickReading(measure, StickPart.Whole, Moments.Mean(values), error, degrees, values.Length, Name)
        {
            Common = uncertainty,
            Chosen = chosen,
            Resolution = rounding,
            Allowance = allowance,
        });
    }
}
