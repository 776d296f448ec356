namespace Tarry.Statistics.Shapes;

/// <summary>The families that are fitted, from the simplest.</summary>
internal static class ShapeTemplates
{
    public static IReadOnlyList<ShapeTemplate> All { get; } =
        [new Normal(), new OneBlock(), new ExponentialTail(), new TwoBlocks(), new TwoBlockLumps(), new TwoNormalLumps()];

    private sealed class Normal : ShapeTemplate
    {
        public override ShapeFamily Family => ShapeFamily.Normal;

        public override int Count => 2;

        public override LatencyShape Build(ReadOnlySpan<double> p) => new NormalShape(p[0], Positive(p[1]));

        public override IEnumerable<double[]> Starts(RoughScale rough) => [[rough.Median, Math.Log(rough.RobustSd)]];
    }

    private sealed class OneBlock : ShapeTemplate
    {
        public override ShapeFamily Family => ShapeFamily.UniformNormal;

        public override int Count => 3;

        public override LatencyShape Build(ReadOnlySpan<double> p) => new UniformNormalShape(p[0], Positive(p[1]), Positive(p[2]));

        public override IEnumerable<double[]> Starts(RoughScale rough) =>
        [
            [rough.Low, Math.Log(rough.Width), Math.Log(0.05 * rough.Width)],
            [rough.Low + (0.2 * rough.Width), Math.Log(0.6 * rough.Width), Math.Log(0.15 * rough.Width)],
        ];
    }

    private sealed class TwoBlocks : ShapeTemplate
    {
        private static readonly double[] WiderParts = [0.55, 0.75, 0.9];

        public override ShapeFamily Family => ShapeFamily.UniformUniformNormal;

        public override int Count => 4;

        public override LatencyShape Build(ReadOnlySpan<double> p) => new UniformUniformNormalShape(p[0], Positive(p[1]), Positive(p[2]), Positive(p[3]));

        public override IEnumerable<double[]> Starts(RoughScale rough) => WiderParts.Select(part =>
            new[] { rough.Low - (0.05 * rough.Width), Math.Log(part * rough.Width), Math.Log((1 - part) * rough.Width), Math.Log(0.04 * rough.Width) });
    }

    private sealed class ExponentialTail : ShapeTemplate
    {
        public override ShapeFamily Family => ShapeFamily.ExponentiallyModifiedNormal;

        public override int Count => 3;

        public override LatencyShape Build(ReadOnlySpan<double> p) => new ExponentiallyModifiedNormalShape(p[0], Positive(p[1]), Positive(p[2]));

        public override IEnumerable<double[]> Starts(RoughScale rough) =>
        [
            [rough.Median - (0.5 * rough.RobustSd), Math.Log(0.6 * rough.RobustSd), Math.Log(0.7 * rough.RobustSd)],
            [rough.Low + (0.1 * rough.RobustSd), Math.Log(0.2 * rough.RobustSd), Math.Log(1.2 * rough.RobustSd)],
        ];
    }

    private sealed class TwoNormalLumps : ShapeTemplate
    {
        public override ShapeFamily Family => ShapeFamily.TwoNormalLumps;

        public override int Count => 5;

        public override LatencyShape Build(ReadOnlySpan<double> p) =>
            new TwoLumpShape(new NormalShape(p[0], Positive(p[1])), new NormalShape(p[0] + Positive(p[2]), Positive(p[3])), Share(p[4]));

        public override IEnumerable<double[]> Starts(RoughScale rough) =>
        [
            [rough.Low + (0.2 * rough.Width), Math.Log(0.15 * rough.Width), Math.Log(0.5 * rough.Width), Math.Log(0.15 * rough.Width), 0],
            [rough.Low + (0.1 * rough.Width), Math.Log(0.08 * rough.Width), Math.Log(0.75 * rough.Width), Math.Log(0.08 * rough.Width), 0],
            [rough.Median, Math.Log(rough.RobustSd), Math.Log(0.7 * rough.Width), Math.Log(rough.RobustSd), -1.5],
        ];
    }

    // With a gap between the blocks: blocks that overlap look much like two waits added.
    private sealed class TwoBlockLumps : ShapeTemplate
    {
        public override ShapeFamily Family => ShapeFamily.TwoUniformLumps;

        public override int Count => 5;

        public override LatencyShape Build(ReadOnlySpan<double> p)
        {
            var (from, block, noise) = (p[0], Positive(p[1]), Positive(p[2]));
            return new TwoLumpShape(new UniformNormalShape(from, block, noise), new UniformNormalShape(from + block + Positive(p[3]), block, noise), Share(p[4]));
        }

        public override IEnumerable<double[]> Starts(RoughScale rough) =>
        [
            [rough.Low, Math.Log(0.4 * rough.Width), Math.Log(0.05 * rough.Width), Math.Log(0.15 * rough.Width), 0],
            [rough.Low, Math.Log(0.15 * rough.Width), Math.Log(0.03 * rough.Width), Math.Log(0.65 * rough.Width), -0.5],
            [rough.Low, Math.Log(0.45 * rough.Width), Math.Log(0.03 * rough.Width), Math.Log(0.05 * rough.Width), -2.5],
        ];
    }
}
