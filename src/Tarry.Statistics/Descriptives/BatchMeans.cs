namespace Tarry.Statistics.Descriptives;

/// <summary>The means of contiguous batches of nearly equal size; no value is left out.</summary>
internal static class BatchMeans
{
    public static double[] Of(ReadOnlySpan<double> inOrder, int batches)
    {
        var means = new double[batches];
        for (var batch = 0; batch < batches; batch++)
        {
            means[batch] = Moments.Mean(inOrder[Start(inOrder.Length, batches, batch)..Start(inOrder.Length, batches, batch + 1)]);
        }

        return means;
    }

    public static int Start(int length, int batches, int batch) => (int)((long)length * batch / batches);
}
