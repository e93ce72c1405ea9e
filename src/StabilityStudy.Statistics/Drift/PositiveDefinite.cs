namespace StabilityStudy.Statistics.Drift;

/// <summary>Linear equations with a symmetric positive definite matrix, by its Cholesky factor; small ones, without the cost of a general library.</summary>
internal static class PositiveDefinite
{
    /// <summary>Solves (H + damping·diag(|h| + 1))·x = right, with H the symmetric part of the matrix and h its diagonal; null where the damped matrix is not positive definite.</summary>
    public static double[]? Solve(double[,] matrix, double[] right, double damping)
    {
        var size = right.Length;
        var lower = new double[size, size];
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var between = (matrix[i, j] + matrix[j, i]) / 2;
                lower[i, j] = Reduced(between, lower, i, j) / lower[j, j];
            }

            var diagonal = matrix[i, i] + (damping * (Math.Abs(matrix[i, i]) + 1));
            var left = Reduced(diagonal, lower, i, i);
            if (!(left > 0))
            {
                return null;
            }

            lower[i, i] = Math.Sqrt(left);
        }

        var solution = new double[size];
        for (var i = 0; i < size; i++)
        {
            solution[i] = right[i];
            for (var k = 0; k < i; k++)
            {
                solution[i] -= lower[i, k] * solution[k];
            }

            solution[i] /= lower[i, i];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++)
            {
                solution[i] -= lower[k, i] * solution[k];
            }

            solution[i] /= lower[i, i];
        }

        return solution;
    }

    /// <summary>What two rows of the factor leave of an element, by their columns left of <paramref name="j"/>.</summary>
    private static double Reduced(double element, double[,] lower, int i, int j)
    {
        for (var k = 0; k < j; k++)
        {
            element -= lower[i, k] * lower[j, k];
        }

        return element;
    }
}
