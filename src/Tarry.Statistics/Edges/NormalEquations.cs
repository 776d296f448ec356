namespace Tarry.Statistics.Edges;

/// <summary>Linear least squares of few unknowns over many samples, each sample added as it comes.</summary>
/// <remarks>
/// Solves (A' A + r I) w = A' y by Cholesky's factors. It squares the condition of A, which is harmless for columns of size one that hardly depend on each other, as here.
/// Of our own, since a library's matrices start threads, and allocate, for each of the thousands of small systems in a recording.
/// </remarks>
internal sealed class NormalEquations(int unknowns)
{
    private readonly double[] matrix = new double[unknowns * unknowns];
    private readonly double[] right = new double[unknowns];
    private double squares;

    /// <summary>How many samples there are.</summary>
    public int Count { get; private set; }

    /// <summary>Adds a sample.</summary>
    /// <param name="row">The value of each column there.</param>
    /// <param name="value">The sample.</param>
    public void Add(ReadOnlySpan<double> row, double value)
    {
        for (var i = 0; i < row.Length; i++)
        {
            var weight = row[i];
            var line = matrix.AsSpan(i * unknowns, i + 1);
            right[i] += weight * value;
            for (var j = 0; j < line.Length; j++)
            {
                line[j] += weight * row[j];
            }
        }

        squares += value * value;
        Count++;
    }

    /// <summary>The weights of the columns, and the root mean square of what they leave; null where a column is a combination of the others.</summary>
    /// <param name="ridge">Added to the diagonal, for each sample.</param>
    public (double[] Weights, double Residual)? Solve(double ridge = 0)
    {
        var (factor, weights) = ((double[])matrix.Clone(), (double[])right.Clone());
        for (var i = 0; i < unknowns; i++)
        {
            factor[(i * unknowns) + i] += ridge * Count;
            for (var j = 0; j <= i; j++)
            {
                var sum = factor[(i * unknowns) + j];
                for (var k = 0; k < j; k++)
                {
                    sum -= factor[(i * unknowns) + k] * factor[(j * unknowns) + k];
                }

                if (i == j && !(sum > 0))
                {
                    return null;
                }

                factor[(i * unknowns) + j] = i == j ? Math.Sqrt(sum) : sum / factor[(j * unknowns) + j];
            }
        }

        for (var i = 0; i < unknowns; i++)
        {
            for (var k = 0; k < i; k++)
            {
                weights[i] -= factor[(i * unknowns) + k] * weights[k];
            }

            weights[i] /= factor[(i * unknowns) + i];
        }

        for (var i = unknowns - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < unknowns; k++)
            {
                weights[i] -= factor[(k * unknowns) + i] * weights[k];
            }

            weights[i] /= factor[(i * unknowns) + i];
        }

        var explained = 0.0;
        for (var i = 0; i < unknowns; i++)
        {
            explained += weights[i] * right[i];
        }

        return (weights, Math.Sqrt(Math.Max(0, squares - explained) / Math.Max(1, Count)));
    }
}
