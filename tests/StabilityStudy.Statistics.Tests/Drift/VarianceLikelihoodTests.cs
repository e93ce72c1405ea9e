using MathNet.Numerics.LinearAlgebra;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Drift;

/// <summary>The sums over specimens against the definition with full covariance matrices, solved by MathNet.Numerics.</summary>
public sealed class VarianceLikelihoodTests
{
    private static readonly ImmutableArray<SpecimenResponses> s_specimens =
    [
        new([0.5, 1.0, 2.0, 2.0], [31, 33.5, 34, 33]),
        new([0.2, 1.5], [25, 24]),
        new([1.0, 1.0, 3.0], [41, 42, 47]),
        new([0.7], [36]),
    ];

    public static TheoryData<double, double, double> Relatives =>
        new()
        {
            { 2, 0.5, 1 },
            { 0.3, -0.2, 0.4 },
            { 10, 0, 0 },
            { 0, 0, 0 },
            { 1, 2, 4 },
        };

    [Theory]
    [MemberData(nameof(Relatives))]
    public void Deviance_line_and_variance_are_those_of_the_full_matrices(
        double a,
        double b,
        double d
    )
    {
        foreach (var isRestricted in new[] { true, false })
        {
            var relative = new SymmetricMatrix(a, b, d);
            var point = new VarianceLikelihood(Sums(), isRestricted).At(relative);
            var (deviance, line, information, variance) = Full(relative, isRestricted);

            Close.Relative(deviance, point.Deviance, 1e-12);
            Close.Relative(line[0], point.Line.First, 1e-12);
            Close.Relative(line[1], point.Line.Second, 1e-11);
            Close.Relative(variance, point.ResidualVariance, 1e-11);
            Close.Relative(information[0, 0], point.Information.A, 1e-12);
            Close.Relative(information[0, 1], point.Information.B, 1e-12);
            Close.Relative(information[1, 1], point.Information.D, 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Relatives))]
    public void Gradient_is_the_derivative_of_the_deviance(double a, double b, double d)
    {
        const double step = 1e-5;
        foreach (var isRestricted in new[] { true, false })
        {
            var likelihood = new VarianceLikelihood(Sums(), isRestricted);
            var gradient = likelihood.At(new(a, b, d)).Gradient;

            Close.Absolute(Slope(new(step, 0, 0)), gradient.A, 1e-6);
            // Both elements off the diagonal move together.
            Close.Absolute(Slope(new(0, step, 0)) / 2, gradient.B, 1e-6);
            Close.Absolute(Slope(new(0, 0, step)), gradient.D, 1e-6);

            double Slope(SymmetricMatrix by) =>
                (
                    likelihood.At(new SymmetricMatrix(a, b, d) + by).Deviance
                    - likelihood.At(new SymmetricMatrix(a, b, d) - by).Deviance
                ) / (2 * step);
        }
    }

    [Fact]
    public void Scaled_and_centered_sums_are_those_of_scaled_and_centered_results()
    {
        var whole = SpecimenSums.Of(new([2.0, 6.0], [11, 15]), 2, 10);

        Assert.Equal(SpecimenSums.Of(new([1.0, 3.0], [1, 5]), 1, 0), whole);
        Assert.Equal(
            (2, 6, 16, 26),
            (whole.Count, whole.Products.First, whole.Products.Second, whole.Squares)
        );
        Assert.Equal(new SymmetricMatrix(2, 4, 10), whole.Moments);
    }

    [Fact]
    public void The_search_ends_where_the_gradient_vanishes_after_few_steps_from_anywhere()
    {
        var random = new SeededRandom(20261126);
        ImmutableArray<SpecimenSums> sums =
        [
            .. Enumerable
                .Range(0, 30)
                .Select(_ =>
                {
                    var (level, slope) = (3 * random.NextNormal(), 1 + random.NextNormal());
                    double[] growth = [0, 0.5, 1, 1.5 + random.NextDouble()];
                    return SpecimenSums.Of(
                        new(
                            [.. growth],
                            [
                                .. growth.Select(g =>
                                    level + (slope * g) + (0.5 * random.NextNormal())
                                ),
                            ]
                        ),
                        1,
                        0
                    );
                }),
        ];
        foreach (var isRestricted in new[] { true, false })
        {
            var likelihood = new VarianceLikelihood(sums, isRestricted);
            var best = VarianceSearch.Find(likelihood, new(1, 0, 1))!;
            foreach (
                var start in new SymmetricMatrix[]
                {
                    new(1, 0, 1),
                    new(30, 0, 3),
                    new(3, -1, 30),
                    new(0.1, 0.05, 0.1),
                    new(500, 0, 500),
                }
            )
            {
                var found = VarianceSearch.FromOne(likelihood, start)!;

                Close.Relative(best.Relative.A, found.Relative.A, 1e-9);
                Close.Relative(best.Relative.B, found.Relative.B, 1e-9);
                Close.Relative(best.Relative.D, found.Relative.D, 1e-9);
                Close.Absolute(0, found.Point.Gradient.A, 1e-8);
                Close.Absolute(0, found.Point.Gradient.B, 1e-8);
                Close.Absolute(0, found.Point.Gradient.D, 1e-8);
                Assert.InRange(found.Steps, 2, 14);
            }
        }
    }

    private static ImmutableArray<SpecimenSums> Sums() =>
        [.. s_specimens.Select(item => SpecimenSums.Of(item, 1, 0))];

    private static (
        double Deviance,
        Vector<double> Line,
        Matrix<double> Information,
        double Variance
    ) Full(SymmetricMatrix relative, bool isRestricted)
    {
        var between = Matrix<double>.Build.DenseOfArray(
            new[,]
            {
                { relative.A, relative.B },
                { relative.B, relative.D },
            }
        );
        var results = s_specimens.Sum(item => item.Growth.Length);
        var covariance = Matrix<double>.Build.DenseIdentity(results);
        var design = Matrix<double>.Build.Dense(results, 2, 1);
        var y = Vector<double>.Build.Dense(results);
        var first = 0;
        foreach (var specimen in s_specimens)
        {
            var count = specimen.Growth.Length;
            for (var i = 0; i < count; i++)
            {
                design[first + i, 1] = specimen.Growth[i];
                y[first + i] = specimen.Response[i];
            }

            var own = design.SubMatrix(first, count, 0, 2);
            covariance.SetSubMatrix(
                first,
                first,
                (own * between * own.Transpose()) + Matrix<double>.Build.DenseIdentity(count)
            );
            first += count;
        }

        var precision = covariance.Inverse();
        var information = design.Transpose() * precision * design;
        var line = information.Solve(design.Transpose() * precision * y);
        var residual = y - (design * line);
        var squares = residual * (precision * residual);
        double degrees = isRestricted ? results - 2 : results;
        var deviance =
            Math.Log(covariance.Determinant())
            + (isRestricted ? Math.Log(information.Determinant()) : 0)
            + (degrees * (1 + Math.Log(2 * Math.PI * squares / degrees)));
        return (deviance, line, information, squares / degrees);
    }
}
