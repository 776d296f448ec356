namespace Tarry.Statistics.Lines;

/// <summary>Few linear equations in as many unknowns, by elimination with the largest pivot of each column.</summary>
public static class LinearEquations
{
    private const double Singular = 1e-13;

    /// <summary>The solution; null where the equations do not determine one. Both arrays are overwritten.</summary>
    /// <param name="matrix">The coefficients, square; overwritten.</param>
    /// <param name="right">The right-hand side; overwritten with the solution.</param>
    public static double[]? Solve(double[,] matrix, double[] right)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArgumentNullException.ThrowIfNull(right);
        var count = right.Length;
        var scale = 0.0;
        foreach (var entry in matrix)
        {
            scale = Math.Max(scale, Math.Abs(entry));
        }

        for (var column = 0; column < count; column++)
        {
            var pivot = column;
            for (var row = column + 1; row < count; row++)
            {
                pivot = Math.Abs(matrix[row, column]) > Math.Abs(matrix[pivot, column]) ? row : pivot;
            }

            if (!(Math.Abs(matrix[pivot, column]) > Singular * scale))
            {
                return null;
            }

            Exchange(matrix, right, column, pivot);
            for (var row = column + 1; row < count; row++)
            {
                var factor = matrix[row, column] / matrix[column, column];
                for (var k = column; k < count; k++)
                {
                    matrix[row, k] -= factor * matrix[column, k];
                }

                right[row] -= factor * right[column];
            }
        }

        for (var row = count - 1; row >= 0; row--)
        {
            for (var k = row + 1; k < count; k++)
            {
                right[row] -= matrix[row, k] * right[k];
            }

            right[row] /= matrix[row, row];
        }

        return right;
    }

    private static void Exchange(double[,] matrix, double[] right, int a, int b)
    {
        if (a == b)
        {
            return;
        }

        for (var k = 0; k < right.Length; k++)
        {
            (matrix[a, k], matrix[b, k]) = (matrix[b, k], matrix[a, k]);
        }

        (right[a], right[b]) = (right[b], right[a]);
    }
}
