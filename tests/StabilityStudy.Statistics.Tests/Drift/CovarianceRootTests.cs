using CsCheck;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Statistics.Tests.Drift;

public sealed class CovarianceRootTests
{
    private static readonly Gen<SymmetricMatrix> s_covariances = Gen.Select(
        Gen.Double[0.01, 9],
        Gen.Double[0.01, 9],
        Gen.Double[-0.99, 0.99],
        (a, d, correlation) => new SymmetricMatrix(a, correlation * Math.Sqrt(a * d), d)
    );

    [Fact]
    public void Root_of_a_covariance_squared_is_the_covariance() =>
        Gen.Select(s_covariances, Gen.Bool)
            .Sample(
                (covariance, slopeFirst) =>
                {
                    var root = CovarianceRoot.RootOf(covariance, slopeFirst);

                    RequireEqual(covariance, root.Squared, 1e-12);
                    Assert.Equal(
                        Math.Sqrt(slopeFirst ? covariance.D : covariance.A),
                        root[0],
                        1e-14
                    );
                    Assert.Equal((root.L11, root.L21, root.L22), (root[0], root[1], root[2]));
                },
                iter: 300
            );

    [Fact]
    public void Gradient_is_the_derivative_of_what_the_covariance_gives() =>
        Gen.Select(s_covariances, s_covariances, Gen.Bool)
            .Sample(
                (covariance, by, slopeFirst) =>
                {
                    // tr(G·D) has the derivative G by D.
                    double Value(CovarianceRoot at) =>
                        (by.A * at.Squared.A) + (2 * by.B * at.Squared.B) + (by.D * at.Squared.D);
                    var root = CovarianceRoot.RootOf(covariance, slopeFirst);
                    var gradient = root.Gradient(by);

                    for (var i = 0; i < 3; i++)
                    {
                        // A quadratic function: its central difference is exact but for rounding.
                        var difference =
                            Value(root.With(i, root[i] + 0.5)) - Value(root.With(i, root[i] - 0.5));
                        Close.Absolute(difference, gradient[i], 1e-11);
                    }
                },
                iter: 300
            );

    [Theory]
    [InlineData(0, 4)]
    [InlineData(-1e-20, 4)]
    [InlineData(4, 0)]
    [InlineData(0, 0)]
    public void A_variance_of_zero_has_a_root_of_zero(double a, double d)
    {
        foreach (var slopeFirst in new[] { true, false })
        {
            var root = CovarianceRoot.RootOf(new SymmetricMatrix(a, 0, d), slopeFirst);

            RequireEqual(new SymmetricMatrix(Math.Max(a, 0), 0, d), root.Squared, 1e-15);
        }
    }

    [Fact]
    public void Full_correlation_leaves_nothing_to_the_last_number() =>
        Assert.Equal(
            new CovarianceRoot(2, 3, 0, SlopeFirst: false),
            CovarianceRoot.RootOf(new SymmetricMatrix(4, 6, 9 - 1e-15), slopeFirst: false)
        );

    private static void RequireEqual(
        SymmetricMatrix expected,
        SymmetricMatrix actual,
        double tolerance
    )
    {
        Close.Absolute(expected.A, actual.A, tolerance);
        Close.Absolute(expected.B, actual.B, tolerance);
        Close.Absolute(expected.D, actual.D, tolerance);
    }
}
