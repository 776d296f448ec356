using Tarry.Reports.Merits;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The axis that the strips of a table share: in per cent of their width, so that a strip fits its column at any width.</summary>
public sealed class StripAxis
{
    private const double FarthestOverMedian = 3;
    private const double FarthestOverHighest = 1.5;
    private const double ZeroBelowShare = 0.4;
    private readonly Ticks ticks;
    private readonly Scale scale;

    private StripAxis(Ticks ticks)
    {
        this.ticks = ticks;
        scale = Scale.Linear(ticks.Low, ticks.High, 1.5, 98.5);
    }

    /// <summary>An axis that holds every value; what reaches far beyond them is cut and said to be.</summary>
    /// <param name="values">What the strips show.</param>
    /// <param name="spans">What lies behind them, from where to where.</param>
    /// <param name="steps">About how many steps are wanted.</param>
    public static StripAxis Cover(IReadOnlyList<MeritValue> values, IReadOnlyList<(double Low, double High)> spans, int steps)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(spans);
        var places = values.Select(value => value.Value ?? value.High).OfType<double>().Order().ToList();
        if (places.Count == 0)
        {
            return new(Ticks.Cover(0, 1, steps));
        }

        var farthest = Math.Max(FarthestOverHighest * places[^1], FarthestOverMedian * places[places.Count / 2]);
        var high = values.Select(value => value.High).OfType<double>().Concat(spans.Select(span => span.High)).Where(end => end <= farthest).Append(places[^1]).Max();
        var low = values.Select(value => value.Low).OfType<double>().Concat(spans.Select(span => span.Low)).Append(places[0]).Min();
        return new(Ticks.Cover(low >= 0 && low < high * ZeroBelowShare ? 0 : low, high, steps));
    }

    /// <summary>Where the ticks are, in per cent, with their labels.</summary>
    public IReadOnlyList<(double Percent, string Label)> Labels => [.. ticks.Values.Select(tick => (scale.At(tick), Numbers.Fixed(tick, ticks.Decimals)))];

    /// <summary>Whether the axis leaves out zero.</summary>
    public bool LeavesOutZero => ticks.Low > 0;

    internal double At(double value) => scale.At(value);

    internal bool Holds(double value) => scale.Holds(value);
}
