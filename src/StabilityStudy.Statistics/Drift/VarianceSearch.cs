namespace StabilityStudy.Statistics.Drift;

/// <summary>Where a search ended.</summary>
/// <param name="Relative">The relative covariance D.</param>
/// <param name="Point">The likelihood there.</param>
/// <param name="Steps">Number of Newton steps from the start that led there.</param>
internal sealed record VarianceMinimum(
    SymmetricMatrix Relative,
    VarianceLikelihoodPoint Point,
    int Steps
);

/// <summary>
/// Finds the relative covariance D = ΛΛ′ of least deviance over the lower triangle Λ, in which D can never leave what is possible and its
/// boundary is an ordinary minimum: Newton steps, damped until the deviance falls, on the exact gradient 2GΛ, down to the last digits that the
/// gradient has. Where the first variance vanishes the other two parameters turn freely, so the larger variance comes first.
/// </summary>
internal static class VarianceSearch
{
    private const int MostSteps = 200;
    private const int MostDampings = 60;

    /// <summary>Distance of the two gradients from which a second derivative is taken, relative to the parameter. Half of the digits of a gradient are then those of the second derivative.</summary>
    private const double Difference = 1e-6;

    private const double SmallestStep = 1e-12;

    /// <summary>With more specimens no second minimum was found in simulation, already from eight on; one start is enough.</summary>
    private const int MostFromSeveral = 40;

    /// <summary>Relative variance from which a start is not at the boundary.</summary>
    private const double LeastStart = 0.1;

    /// <summary>Fall of the deviance that a step promises below which it only polishes.</summary>
    private const double Quiet = 1e-9;

    /// <summary>Steps that polish; each adds several digits.</summary>
    private const int MostQuietSteps = 4;

    /// <summary>Slope variances, as a share of the one of the specimens' own lines, and correlations from which the search starts beside the start given: with few specimens the deviance can have several minima.</summary>
    private static readonly (double Share, double Correlation)[] s_starts =
    [
        (1, 0),
        (1, 0.9),
        (1, -0.9),
        (0.01, 0),
        (0.01, 0.9),
        (0.01, -0.9),
    ];

    /// <summary>The least deviance that any start leads to; null when the steps of none settle.</summary>
    /// <param name="likelihood">The likelihood.</param>
    /// <param name="start">A relative covariance to start from.</param>
    public static VarianceMinimum? Find(VarianceLikelihood likelihood, SymmetricMatrix start) =>
        Starts(start)
            .Take(likelihood.SpecimenCount > MostFromSeveral ? 1 : 1 + s_starts.Length)
            .Select(from => FromOne(likelihood, from))
            .OfType<VarianceMinimum>()
            .MinBy(found => found.Point.Deviance);

    private static IEnumerable<SymmetricMatrix> Starts(SymmetricMatrix start)
    {
        yield return start;

        // From a variance of zero no step leads away, so the others start well inside.
        var a = Math.Max(start.A, LeastStart);
        var d = start.D;
        foreach (var (share, correlation) in s_starts)
        {
            var slope = Math.Max(share * d, LeastStart);
            yield return new SymmetricMatrix(a, correlation * Math.Sqrt(a * slope), slope);
        }
    }

    /// <summary>The minimum that one start leads to; null when the steps do not settle.</summary>
    public static VarianceMinimum? FromOne(VarianceLikelihood likelihood, SymmetricMatrix start)
    {
        var slopeFirst = start.D > start.A;
        return Descend(likelihood, start, slopeFirst) ?? Descend(likelihood, start, !slopeFirst);
    }

    private static VarianceMinimum? Descend(
        VarianceLikelihood likelihood,
        SymmetricMatrix start,
        bool slopeFirst
    )
    {
        var current = CovarianceRoot.RootOf(start, slopeFirst);
        var point = likelihood.At(current.Squared);
        var damping = 1e-3;
        var quietSteps = 0;
        for (var step = 0; step < MostSteps; step++)
        {
            var gradient = current.Gradient(point.Gradient);
            var curvature = Curvature(likelihood, current, gradient);
            var moved = false;
            for (var attempt = 0; attempt < MostDampings; attempt++)
            {
                if (PositiveDefinite.Solve(curvature, gradient, damping) is { } change)
                {
                    var next = new CovarianceRoot(
                        current.L11 - change[0],
                        current.L21 - change[1],
                        current.L22 - change[2],
                        slopeFirst
                    );
                    var there = likelihood.At(next.Squared);
                    var isBetter =
                        there.Deviance < point.Deviance
                        || (
                            IsSmall(change, current)
                            && Size(next.Gradient(there.Gradient)) <= Size(gradient)
                        );
                    if (double.IsFinite(there.Deviance) && isBetter)
                    {
                        quietSteps += Promise(change, gradient) <= Quiet ? 1 : 0;
                        moved = !IsTiny(change, current);
                        (current, point) = (next, there);
                        damping = Math.Max(damping / 10, 1e-15);
                        break;
                    }

                    if (IsTiny(change, current))
                    {
                        break;
                    }
                }

                damping *= 4;
            }

            if (!moved || quietSteps == MostQuietSteps)
            {
                return new VarianceMinimum(current.Squared, point, step + 1);
            }
        }

        return null;
    }

    private static double[,] Curvature(
        VarianceLikelihood likelihood,
        CovarianceRoot at,
        double[] gradient
    )
    {
        var curvature = new double[3, 3];
        for (var j = 0; j < 3; j++)
        {
            var width = Difference * Math.Max(Math.Abs(at[j]), 1e-2);
            var beside = at.With(j, at[j] + width);
            var there = beside.Gradient(likelihood.At(beside.Squared).Gradient);
            for (var i = 0; i < 3; i++)
            {
                curvature[i, j] = (there[i] - gradient[i]) / width;
            }
        }

        return curvature;
    }

    private static double Promise(double[] change, double[] gradient) =>
        (change[0] * gradient[0]) + (change[1] * gradient[1]) + (change[2] * gradient[2]);

    private static double Size(double[] gradient) => gradient.Max(Math.Abs);

    private static bool IsSmall(double[] change, CovarianceRoot at) =>
        Enumerable.Range(0, 3).All(i => Math.Abs(change[i]) <= 1e-5 * (Math.Abs(at[i]) + 1));

    private static bool IsTiny(double[] change, CovarianceRoot at) =>
        Enumerable
            .Range(0, 3)
            .All(i => Math.Abs(change[i]) <= SmallestStep * (Math.Abs(at[i]) + 1e-3));
}
