using Tarry.Metrology;

namespace Tarry.Statistics.Shapes;

/// <summary>A shape at another place.</summary>
internal sealed class ShiftedShape(LatencyShape shape, double byMs) : LatencyShape
{
    public override ShapeFamily Family => shape.Family;

    public override IReadOnlyList<KeyValuePair<string, double>> Parameters => shape.Parameters;

    public override double Mean => shape.Mean + byMs;

    public override double Variance => shape.Variance;

    internal override double NoiseSd => shape.NoiseSd;

    public override double Density(double x) => shape.Density(x - byMs);

    public override double LowerTail(double x) => shape.LowerTail(x - byMs);

    public override double UpperTail(double x) => shape.UpperTail(x - byMs);

    public override double Draw(SeededGenerator generator) => shape.Draw(generator) + byMs;
}
