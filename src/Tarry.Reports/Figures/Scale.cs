namespace Tarry.Reports.Figures;

/// <summary>From a latency to a place in a figure.</summary>
internal sealed class Scale
{
    private readonly double from;
    private readonly double to;
    private readonly Func<double, double> transform;

    private Scale(double low, double high, double from, double to, Func<double, double> transform) =>
        (Low, High, this.from, this.to, this.transform) = (low, high, from, to, transform);

    /// <summary>The value at the left end.</summary>
    public double Low { get; }

    /// <summary>The value at the right end.</summary>
    public double High { get; }

    /// <summary>Equal steps for equal differences.</summary>
    public static Scale Linear(double low, double high, double from, double to) => new(low, high, from, to, value => value);

    /// <summary>Equal steps for equal ratios; both ends above zero.</summary>
    public static Scale Logarithmic(double low, double high, double from, double to) => new(low, high, from, to, Math.Log);

    /// <summary>The place of a value, kept between the ends.</summary>
    public double At(double value)
    {
        var share = (transform(Math.Clamp(value, Low, High)) - transform(Low)) / (transform(High) - transform(Low));
        return from + (share * (to - from));
    }

    /// <summary>Whether a value lies between the ends, the rounding of sums forgiven.</summary>
    public bool Holds(double value)
    {
        var rounding = (High - Low) * 1e-9;
        return value >= Low - rounding && value <= High + rounding;
    }
}
