using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Statistics.Tests.Drift;

/// <summary>Equations against the general solver of MathNet.Numerics.</summary>
public sealed class PositiveDefiniteTests
{
    private static readonly Gen<Matrix<double>> s_factors = Gen.Double[-3, 3]
        .Array[9]
        .Select(values => Matrix<double>.Build.DenseOfColumnMajor(3, 3, values));

    private static readonly Gen<double[]> s_rights = Gen.Double[-5, 5].Array[3];

    [Fact]
    public void Solution_is_that_of_a_general_solver() =>
        Gen.Select(s_factors, s_rights, Gen.Double[0, 2])
            .Sample(
                (factor, right, damping) =>
                {
                    var matrix =
                        (factor * factor.Transpose())
                        + (0.1 * Matrix<double>.Build.DenseIdentity(3));
                    var damped = matrix.Clone();
                    for (var i = 0; i < 3; i++)
                    {
                        damped[i, i] += damping * (matrix[i, i] + 1);
                    }

                    var expected = damped.Solve(Vector<double>.Build.Dense(right));
                    var found = PositiveDefinite.Solve(matrix.ToArray(), right, damping)!;

                    for (var i = 0; i < 3; i++)
                    {
                        Close.Absolute(expected[i], found[i], 1e-9 * (1 + expected.L2Norm()));
                    }
                },
                iter: 300
            );

    [Fact]
    public void Only_the_symmetric_part_counts() =>
        Assert.Equal(
            PositiveDefinite.Solve(
                new[,]
                {
                    { 4.0, 1 },
                    { 1, 3 },
                },
                [1, 2],
                0
            ),
            PositiveDefinite.Solve(
                new[,]
                {
                    { 4.0, 3 },
                    { -1, 3 },
                },
                [1, 2],
                0
            )
        );

    [Theory]
    [InlineData(1, 2, 1)]
    [InlineData(1, 1, 1)]
    [InlineData(-1, 0, 1)]
    [InlineData(0, 0, 1)]
    [InlineData(double.NaN, 0, 1)]
    public void A_matrix_that_is_not_positive_definite_has_no_solution(
        double a,
        double b,
        double d
    ) =>
        Assert.Null(
            PositiveDefinite.Solve(
                new[,]
                {
                    { a, b },
                    { b, d },
                },
                [1, 1],
                0
            )
        );

    [Fact]
    public void Damping_makes_one_positive_definite()
    {
        // (−1 + 3·(1 + 1))·x = 10
        double[,] matrix =
        {
            { -1.0 },
        };

        Assert.Equal([2], PositiveDefinite.Solve(matrix, [10], 3)!);
    }
}
