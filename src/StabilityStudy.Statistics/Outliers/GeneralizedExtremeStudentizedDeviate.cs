using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Outliers;

/// <summary>Rosner's procedure for one or more outliers in a normal sample. It flags; nothing is removed by it.</summary>
public static class GeneralizedExtremeStudentizedDeviate
{
    private const int FewestValues = 3;

    /// <summary>Rosner found the critical values accurate from here on; below, they are approximate.</summary>
    private const int FewestForAccurateLevel = 25;

    /// <summary>
    /// For i = 1 … r: Rᵢ = max|x − x̄|/s of the n − i + 1 values left (SD divisor n − i), then the farthest value is taken out. Critical values
    /// λᵢ = (n − i)·t/√((n − i − 1 + t²)(n − i + 1)), t the quantile of Student's t at 1 − α/(2(n − i + 1)) with n − i − 1 degrees of freedom. The number of outliers is the largest i with
    /// Rᵢ > λᵢ: two outliers can hide each other from the first step (Rosner, Technometrics 25 (1983) 165–172; formulas as in the NIST/SEMATECH e-Handbook, 1.3.5.17.3).
    /// Assumes that the values without the outliers are independent and normal. Of equally far values the greater is taken first, of equal values
    /// the first in the input. Zeros need no treatment. Smallest n: 3 by rule; below 25 a note says that the level is approximate.
    /// Stops early when what is left has no spread.
    /// </summary>
    /// <param name="values">The values, in any unit.</param>
    /// <param name="mostOutliers">r, the most outliers to look for, from 1 to n − 2.</param>
    /// <param name="significanceLevel">α, between 0 and 1, such as 0.05.</param>
    /// <returns>Steps and outliers; or too few values (n below 3, or r above n − 2), or zero spread.</returns>
    /// <exception cref="ArgumentException">A value is not finite or beyond ±10³⁰⁰, r is below 1, or α is not between 0 and 1.</exception>
    public static Estimate<ExtremeStudentizedDeviate> Find(
        ReadOnlySpan<double> values,
        int mostOutliers,
        double significanceLevel
    )
    {
        RequireArguments(values, mostOutliers, significanceLevel);
        var n = values.Length;
        if (n < FewestValues || mostOutliers > n - 2)
        {
            return Estimate.Refused<ExtremeStudentizedDeviate>(Refusal.TooFewForOutliers);
        }

        if (!values.ContainsAnyExcept(values[0]))
        {
            return Estimate.Refused<ExtremeStudentizedDeviate>(Refusal.SameValues);
        }

        var steps = Steps(values, mostOutliers, significanceLevel);
        var outlierCount = 0;
        for (var i = 0; i < steps.Length; i++)
        {
            if (steps[i].Statistic > steps[i].CriticalValue)
            {
                outlierCount = i + 1;
            }
        }

        var found = new ExtremeStudentizedDeviate(
            n,
            mostOutliers,
            significanceLevel,
            steps,
            [.. steps.Take(outlierCount).Select(step => step.Index)]
        );
        return n < FewestForAccurateLevel
            ? Estimate.Of(found, EstimateNote.ApproximateOutlierLevel)
            : Estimate.Of(found);
    }

    private static ImmutableArray<EsdStep> Steps(
        ReadOnlySpan<double> values,
        int mostOutliers,
        double significanceLevel
    )
    {
        // Those not yet taken out, in their order.
        var (left, indices) = (values.ToArray(), Enumerable.Range(0, values.Length).ToArray());
        var steps = ImmutableArray.CreateBuilder<EsdStep>(mostOutliers);
        for (var i = 1; i <= mostOutliers; i++)
        {
            var count = values.Length - i + 1;
            var moments = Moments.Of(left.AsSpan(0, count));
            if (moments.IsConstant)
            {
                break;
            }

            var farthest = Farthest(left.AsSpan(0, count), moments.Mean);
            steps.Add(
                new EsdStep(
                    indices[farthest],
                    left[farthest],
                    Math.Abs(left[farthest] - moments.Mean) / moments.StandardDeviation,
                    CriticalValue(values.Length, i, significanceLevel)
                )
            );
            left.AsSpan(farthest + 1).CopyTo(left.AsSpan(farthest));
            indices.AsSpan(farthest + 1).CopyTo(indices.AsSpan(farthest));
        }

        return steps.ToImmutable();
    }

    /// <summary>The place of the value farthest from the mean; of two as far the larger, of equal ones the first.</summary>
    private static int Farthest(ReadOnlySpan<double> values, double mean)
    {
        var farthest = 0;
        for (var i = 1; i < values.Length; i++)
        {
            var order = Math.Abs(values[i] - mean).CompareTo(Math.Abs(values[farthest] - mean));
            if (order > 0 || (order == 0 && values[i] > values[farthest]))
            {
                farthest = i;
            }
        }

        return farthest;
    }

    private static double CriticalValue(int n, int i, double significanceLevel)
    {
        var t = StudentT.Quantile(1 - (significanceLevel / (2 * (n - i + 1))), n - i - 1);
        return (n - i) * t / Math.Sqrt((n - i - 1 + (t * t)) * (n - i + 1));
    }

    private static void RequireArguments(
        ReadOnlySpan<double> values,
        int mostOutliers,
        double significanceLevel
    )
    {
        Require.Numbers(values, nameof(values));
        if (mostOutliers < 1)
        {
            throw new ArgumentException(
                "At least one outlier is looked for.",
                nameof(mostOutliers)
            );
        }

        Require.InsideUnitInterval(significanceLevel, nameof(significanceLevel));
    }
}
