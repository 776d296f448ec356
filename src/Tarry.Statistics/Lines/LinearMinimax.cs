namespace Tarry.Statistics.Lines;

/// <summary>The unknowns z that make the largest of many linear expressions c + a z as small as it can be.</summary>
/// <remarks>
/// Exchange of one expression at a time among those that hold the value (E. L. Stiefel, Numer. Math. 1, 1959; the dual simplex
/// method for this problem). Of p unknowns p + 1 expressions hold it. A fit with deviations to either side states each twice,
/// once with either sign.
/// </remarks>
internal static class LinearMinimax
{
    private const double Rounding = 1e-13;

    /// <summary>The unknowns.</summary>
    /// <param name="slopes">The coefficients a, a row an expression.</param>
    /// <param name="constants">The constants c.</param>
    /// <param name="held">Which p + 1 expressions to begin with: zero lies among their coefficients (a positive mean of them).</param>
    /// <returns>The unknowns, or null where the start was none or the expressions do not bound them.</returns>
    public static double[]? Solve(double[][] slopes, double[] constants, int[] held)
    {
        var unknowns = slopes[0].Length;
        var scale = constants.Max(Math.Abs);
        for (var round = 0; round < 50 * slopes.Length; round++)
        {
            if (Weights(slopes, held, new double[unknowns]) is not { } weights || weights.Any(weight => weight < -Rounding))
            {
                return null;
            }

            if (Held(slopes, constants, held) is not { } point)
            {
                return null;
            }

            var (value, entering, largest) = (point[unknowns], -1, double.NegativeInfinity);
            for (var i = 0; i < slopes.Length; i++)
            {
                var at = constants[i];
                for (var k = 0; k < unknowns; k++)
                {
                    at += slopes[i][k] * point[k];
                }

                (entering, largest) = at > largest ? (i, at) : (entering, largest);
            }

            if (largest <= value + (Rounding * (scale + Math.Abs(value))))
            {
                return point[..unknowns];
            }

            if (Weights(slopes, held, slopes[entering]) is not { } shares || Leaving(weights, shares) is not { } leaving)
            {
                return null;
            }

            held[leaving] = entering;
        }

        return null;
    }

    // The weights w of the held expressions with sum w a = target and sum w = 1.
    private static double[]? Weights(double[][] slopes, int[] held, double[] target)
    {
        var count = held.Length;
        var matrix = new double[count, count];
        var right = new double[count];
        for (var column = 0; column < count; column++)
        {
            for (var row = 0; row < count - 1; row++)
            {
                matrix[row, column] = slopes[held[column]][row];
            }

            matrix[count - 1, column] = 1;
        }

        target.CopyTo(right, 0);
        right[count - 1] = 1;
        return LinearEquations.Solve(matrix, right);
    }

    // The point at which all held expressions have one value, and that value.
    private static double[]? Held(double[][] slopes, double[] constants, int[] held)
    {
        var count = held.Length;
        var matrix = new double[count, count];
        var right = new double[count];
        for (var row = 0; row < count; row++)
        {
            for (var column = 0; column < count - 1; column++)
            {
                matrix[row, column] = slopes[held[row]][column];
            }

            matrix[row, count - 1] = -1;
            right[row] = -constants[held[row]];
        }

        return LinearEquations.Solve(matrix, right);
    }

    private static int? Leaving(double[] weights, double[] shares)
    {
        int? leaving = null;
        var least = double.PositiveInfinity;
        for (var k = 0; k < weights.Length; k++)
        {
            if (shares[k] > Rounding && weights[k] / shares[k] < least)
            {
                (leaving, least) = (k, weights[k] / shares[k]);
            }
        }

        return leaving;
    }
}
