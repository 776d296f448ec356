namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>Between which levels a map of any form begins to say something, and between which it comes to its end; per cent of half the range.</summary>
/// <param name="Still">The last level up to which nothing is said, to 0.1 % of the end; 0 where the first says something.</param>
/// <param name="Moving">The first level at which 1 % of the end is said.</param>
/// <param name="Rising">The last level at which less than 99 % of the end is said; 0 where the first says as much.</param>
/// <param name="Ended">The level from which on 99.9 % are said.</param>
internal readonly record struct MapEdges(double Still, double Moving, double Rising, double Ended)
{
    private const double Nothing = 0.001;
    private const double Something = 0.01;

    public static MapEdges Of(double[] without, double[] with)
    {
        var end = with.Max();
        var leaves = Array.FindIndex(with, said => Math.Abs(said) >= Nothing * end);
        var moving = Array.FindIndex(with, said => said >= Something * end);
        var rising = Array.FindLastIndex(with, said => said < (1 - Something) * end);
        var ended = Array.FindLastIndex(with, said => said < (1 - Nothing) * end) + 1;
        return new MapEdges(leaves == 0 ? 0 : without[leaves - 1], without[moving], rising < 0 ? 0 : without[rising], without[Math.Min(ended, without.Length - 1)]);
    }
}
