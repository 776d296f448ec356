namespace Tarry.Statistics.Censoring;

/// <summary>Weighted least squares under the condition that the values do not decrease.</summary>
internal static class IsotonicRegression
{
    /// <summary>The fitted values, by pooling adjacent violators (M. Ayer and others, Ann. Math. Stat. 26, 1955; from memory).</summary>
    public static double[] Of(double[] values, double[] weights)
    {
        var blocks = new List<(double Mean, double Weight, int Count)>(values.Length);
        for (var index = 0; index < values.Length; index++)
        {
            var block = (Mean: values[index], Weight: weights[index], Count: 1);
            while (blocks.Count > 0 && blocks[^1].Mean >= block.Mean)
            {
                var last = blocks[^1];
                blocks.RemoveAt(blocks.Count - 1);
                var weight = last.Weight + block.Weight;
                block = (((last.Mean * last.Weight) + (block.Mean * block.Weight)) / weight, weight, last.Count + block.Count);
            }

            blocks.Add(block);
        }

        return [.. blocks.SelectMany(block => Enumerable.Repeat(block.Mean, block.Count))];
    }
}
