using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Drift;

/// <summary>
/// Finds the relative covariance D = ΛΛ′ of least deviance over the lower triangle Λ, in which D can never leave what is possible and its
/// boundary is an ordinary minimum: Newton steps, damped until the deviance falls, on the exact gradient 2GΛ, down to the last digits that the
/// gradient has. Where the first variance vanishes the other two parameters turn freely, so the larger variance comes first.
/// </summary>
internal static class VarianceSearch
{
    private const int MostSteps = 200;
    private const int MostDampings = 60;

    /// <summary>Distance of the two gradients from which a second derivative is taken, relative to the parameter.</summary>
    private const double Difference = 1e-4;

    private const double SmallestStep = 1e-12;

    /// <summary>With more specimens no second minimum was found in simulation, already from eight on; one start is enough.</summary>
    private const int MostFromSeveral = 40;

    /// <summary>Relative variance from which a start is not at the boundary.</summary>
    private const double LeastStart = 0.1;

    /// <summary>Fall of the deviance that a step promises below which it only polishes.</summary>
    private const double Quiet = 1e-9;

    /// <summary>Steps that polish; each doubles the digits.</summary>
    private const int MostQuietSteps = 4;

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Triangle(double L11, double L21, double L22, bool SlopeFirst)
    {
        public SymmetricMatrix Squared
        {
            get
            {
                var (first, second) = (L11 * L11, (L21 * L21) + (L22 * L22));
                return SlopeFirst ? new(second, L11 * L21, first) : new(first, L11 * L21, second);
            }
        }

        public double this[int index] =>
            index switch
            {
                0 => L11,
                1 => L21,
                _ => L22,
            };

        public static Triangle RootOf(SymmetricMatrix matrix, bool slopeFirst)
        {
            var (first, last) = slopeFirst ? (matrix.D, matrix.A) : (matrix.A, matrix.D);
            var root = Math.Sqrt(Math.Max(first, 0));
            var between = root > 0 ? matrix.B / root : 0;
            return new(
                root,
                between,
                Math.Sqrt(Math.Max(last - (between * between), 0)),
                slopeFirst
            );
        }

        /// <summary>2GΛ, with G the derivative by the covariance.</summary>
        public double[] Gradient(SymmetricMatrix derivative)
        {
            var (first, last) = SlopeFirst
                ? (derivative.D, derivative.A)
                : (derivative.A, derivative.D);
            return
            [
                2 * ((first * L11) + (derivative.B * L21)),
                2 * ((derivative.B * L11) + (last * L21)),
                2 * last * L22,
            ];
        }

        public Triangle With(int index, double value) =>
            index switch
            {
                0 => this with { L11 = value },
                1 => this with { L21 = value },
                _ => this with { L22 = value },
            };
    }

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

    /// <summary>The relative covariance of the least deviance that any start leads to, and the likelihood there; null when the steps of none settle.</summary>
    public static (SymmetricMatrix Relative, VarianceLikelihoodPoint Point)? Find(
        VarianceLikelihood likelihood,
        SymmetricMatrix start,
        int specimens
    ) =>
        Starts(start)
            .Take(specimens > MostFromSeveral ? 1 : 1 + s_starts.Length)
            .Select(from => FromOne(likelihood, from))
            .Where(found => found is not null)
            .MinBy(found => found!.Value.Point.Deviance);

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

    private static (SymmetricMatrix Relative, VarianceLikelihoodPoint Point)? FromOne(
        VarianceLikelihood likelihood,
        SymmetricMatrix start
    )
    {
        var slopeFirst = start.D > start.A;
        return Find(likelihood, start, slopeFirst) ?? Find(likelihood, start, !slopeFirst);
    }

    private static (SymmetricMatrix Relative, VarianceLikelihoodPoint Point)? Find(
        VarianceLikelihood likelihood,
        SymmetricMatrix start,
        bool slopeFirst
    )
    {
        var current = Triangle.RootOf(start, slopeFirst);
        var point = likelihood.At(current.Squared);
        var damping = 1e-3;
        var quietSteps = 0;
        for (var step = 0; step < MostSteps; step++)
        {
            var gradient = current.Gradient(point.Gradient);
            var curvature = Curvature(likelihood, current);
            var moved = false;
            for (var attempt = 0; attempt < MostDampings; attempt++)
            {
                if (Solve(curvature, gradient, damping) is { } change)
                {
                    var next = new Triangle(
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
                return (current.Squared, point);
            }
        }

        return null;
    }

    private static double[,] Curvature(VarianceLikelihood likelihood, Triangle at)
    {
        var curvature = new double[3, 3];
        for (var j = 0; j < 3; j++)
        {
            var width = Difference * Math.Max(Math.Abs(at[j]), 1e-2);
            var above = at.With(j, at[j] + width);
            var below = at.With(j, at[j] - width);
            var up = above.Gradient(likelihood.At(above.Squared).Gradient);
            var down = below.Gradient(likelihood.At(below.Squared).Gradient);
            for (var i = 0; i < 3; i++)
            {
                curvature[i, j] = (up[i] - down[i]) / (2 * width);
            }
        }

        return curvature;
    }

    /// <summary>The damped Newton step; null where the damped curvature is not positive definite.</summary>
    private static double[]? Solve(double[,] curvature, double[] gradient, double damping)
    {
        var lower = new double[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = (curvature[i, j] + curvature[j, i]) / 2;
                if (i == j)
                {
                    sum += damping * (Math.Abs(sum) + 1);
                }

                for (var k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                if (i == j)
                {
                    if (sum <= 0)
                    {
                        return null;
                    }

                    lower[i, i] = Math.Sqrt(sum);
                }
                else
                {
                    lower[i, j] = sum / lower[j, j];
                }
            }
        }

        var solution = new double[3];
        for (var i = 0; i < 3; i++)
        {
            solution[i] = gradient[i];
            for (var k = 0; k < i; k++)
            {
                solution[i] -= lower[i, k] * solution[k];
            }

            solution[i] /= lower[i, i];
        }

        for (var i = 2; i >= 0; i--)
        {
            for (var k = i + 1; k < 3; k++)
            {
                solution[i] -= lower[k, i] * solution[k];
            }

            solution[i] /= lower[i, i];
        }

        return solution;
    }

    private static double Promise(double[] change, double[] gradient) =>
        (change[0] * gradient[0]) + (change[1] * gradient[1]) + (change[2] * gradient[2]);

    private static double Size(double[] gradient) => gradient.Max(Math.Abs);

    private static bool IsSmall(double[] change, Triangle at) =>
        Enumerable.Range(0, 3).All(i => Math.Abs(change[i]) <= 1e-5 * (Math.Abs(at[i]) + 1));

    private static bool IsTiny(double[] change, Triangle at) =>
        Enumerable
            .Range(0, 3)
            .All(i => Math.Abs(change[i]) <= SmallestStep * (Math.Abs(at[i]) + 1e-3));
}
