namespace Tarry.Statistics.Shapes;

/// <summary>Solves (I + damping diag I) move = gradient for a small symmetric matrix.</summary>
internal static class DampedSolution
{
    // Keeps a parameter of which the data say nothing, such as the width of a block that is not there, from dragging the others along.
    private const double Ridge = 0.3;

    /// <summary>The move; 0 for parameters that are held.</summary>
    /// <param name="information">The information matrix.</param>
    /// <param name="gradient">The gradient.</param>
    /// <param name="damping">By how much the diagonal is enlarged.</param>
    /// <param name="held">The parameters that are held, if any.</param>
    /// <param name="largestLast">How far the last parameter may move; the others move as that calls for.</param>
    public static double[] Of(double[,] information, double[] gradient, double damping, ReadOnlySpan<int> held, double largestLast)
    {
        var last = gradient.Length - 1;
        var move = Solve(Damped(information, damping, held, null), Right(information, gradient, held, null, 0));
        if (Math.Abs(move[last]) > largestLast)
        {
            var limited = Math.CopySign(largestLast, move[last]);
            move = Solve(Damped(information, damping, held, last), Right(information, gradient, held, last, limited));
            move[last] = limited;
        }

        return move;
    }

    private static double[,] Damped(double[,] information, double damping, ReadOnlySpan<int> held, int? given)
    {
        var count = information.GetLength(0);
        var matrix = new double[count, count];
        for (var a = 0; a < count; a++)
        {
            var isFixed = held.Contains(a) || a == given;
            for (var b = 0; b < count; b++)
            {
                matrix[a, b] = isFixed || held.Contains(b) || b == given ? 0 : information[a, b];
            }

            matrix[a, a] = isFixed ? 1 : (information[a, a] * (1 + damping)) + (a == 0 ? 1e-9 : Ridge);
        }

        return matrix;
    }

    private static double[] Right(double[,] information, double[] gradient, ReadOnlySpan<int> held, int? given, double move)
    {
        var right = (double[])gradient.Clone();
        for (var a = 0; a < right.Length; a++)
        {
            right[a] = held.Contains(a) || a == given ? 0 : given is { } at ? right[a] - (information[a, at] * move) : right[a];
        }

        return right;
    }

    /// <summary>The inverse of a symmetric positive matrix.</summary>
    public static double[,] Inverse(double[,] matrix)
    {
        var count = matrix.GetLength(0);
        var inverse = new double[count, count];
        for (var column = 0; column < count; column++)
        {
            var unit = new double[count];
            unit[column] = 1;
            var ridged = (double[,])matrix.Clone();
            for (var a = 0; a < count; a++)
            {
                ridged[a, a] += 1e-6;
            }

            var solved = Solve(ridged, unit);
            for (var row = 0; row < count; row++)
            {
                inverse[row, column] = solved[row];
            }
        }

        return inverse;
    }

    // Elimination without pivoting: the matrix is positive definite.
    private static double[] Solve(double[,] matrix, double[] right)
    {
        var count = right.Length;
        for (var k = 0; k < count; k++)
        {
            for (var row = k + 1; row < count; row++)
            {
                var factor = matrix[row, k] / matrix[k, k];
                for (var column = k; column < count; column++)
                {
                    matrix[row, column] -= factor * matrix[k, column];
                }

                right[row] -= factor * right[k];
            }
        }

        for (var row = count - 1; row >= 0; row--)
        {
            for (var column = row + 1; column < count; column++)
            {
                right[row] -= matrix[row, column] * right[column];
            }

            right[row] /= matrix[row, row];
        }

        return right;
    }
}
