namespace Tarry.Findings.Sticks.Ramps;

/// <summary>The standard deviation of noise on a moving position: from the median size of its second differences, which a steady motion leaves at 0.</summary>
/// <remarks>x - 2 x' + x'' has variance 6 s^2; the median absolute value of a normal deviate is 0.6745 of its standard deviation.</remarks>
internal static class PassNoise
{
    private const double NormalMedian = 0.67448975019608171;

    public static double Of(ReadOnlySpan<double> positions)
    {
        if (positions.Length < 3)
        {
            return 0;
        }

        var differences = new double[positions.Length - 2];
        for (var i = 0; i < differences.Length; i++)
        {
            differences[i] = Math.Abs(positions[i] - (2 * positions[i + 1]) + positions[i + 2]);
        }

        Array.Sort(differences);
        return differences[differences.Length / 2] / NormalMedian / Math.Sqrt(6);
    }
}
