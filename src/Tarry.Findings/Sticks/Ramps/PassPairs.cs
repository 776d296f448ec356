namespace Tarry.Findings.Sticks.Ramps;

/// <summary>The replicates of a ramp: a pass there and one back together, so that hysteresis is in neither's linearity; single passes where there are not two pairs.</summary>
internal sealed class PassPairs
{
    public PassPairs(IReadOnlyList<LevelPass> passes)
    {
        Passes = passes;
        Pairs = [.. passes.Where(pass => pass.Upwards).Zip(passes.Where(pass => !pass.Upwards))];
        Units = Pairs.Count >= 2 ? [.. Pairs.Select(pair => new[] { pair.Up, pair.Down })] : [.. passes.Select(pass => new[] { pass })];
        NameOfPasses = IsSteadyMotion ? "passes, steady motion assumed" : "passes";
        Name = Pairs.Count < 2 ? NameOfPasses : IsSteadyMotion ? "passes there and back, steady motion assumed" : "passes there and back";
    }

    public IReadOnlyList<LevelPass> Passes { get; }

    public IReadOnlyList<(LevelPass Up, LevelPass Down)> Pairs { get; }

    public IReadOnlyList<IReadOnlyList<LevelPass>> Units { get; }

    public string Name { get; }

    public string NameOfPasses { get; }

    public bool IsSteadyMotion => Passes.Any(pass => pass.IsSteadyMotion);

    public double Step => Passes[0].Step;

    /// <summary>Noise of the noisiest pass.</summary>
    public double Noise => Passes.Max(pass => pass.Noise);

    /// <summary>The coarsest distance between levels.</summary>
    public double LevelGap => Passes.Max(pass => pass.LevelGap);

    /// <summary>The positions that every pass reaches.</summary>
    public (double Low, double High) Reached => (Passes.Max(pass => pass.Lowest), Passes.Min(pass => pass.Highest));

    /// <summary>Crossings of heights, the mean of each unit's passes.</summary>
    public double[][] Crossings(double[] heights) => [.. Units.Select(unit =>
    {
        var sum = new double[heights.Length];
        foreach (var crossings in unit.Select(pass => pass.Crossings(heights)))
        {
            for (var i = 0; i < sum.Length; i++)
            {
                sum[i] += crossings[i] / unit.Count;
            }
        }

        return sum;
    })];
}
