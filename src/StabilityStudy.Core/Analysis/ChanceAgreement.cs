namespace StabilityStudy.Core.Analysis;

/// <summary>
/// How probable it is that results agree to the last digit by chance, from the step s in which they are reported and the spread that they have.
/// A normal value of standard deviation σ falls on a given step with a probability of at most s/(σ√(2π)), whatever its mean.
/// <para>
/// <em>Another specimen.</em> Its baseline falls on the step of this one with s·q/(2·0.05·v), where q is the share of the other specimens whose baseline lies
/// within 5 % of v, this baseline, so that a crowded range of results is a crowded one here; it is at least the share of others that have this baseline. Each later result falls on it with s/(σ√(2π)): σ is v times the
/// median absolute deviation (1.4826 times, as for a normal value) of how far the specimens' results lie from the mean of their earlier ones, or from the one before,
/// whichever is smaller; both leave out what agreement so far has already made alike.
/// </para>
/// <para>
/// <em>Another time.</em> A result falls on the step of the k equal results before it with s/(σ√(2π(1 + 1/k))): σ is the imprecision within a run, which
/// is the least that two measurements of one plasma differ by.
/// </para>
/// Neither is above 1. Both are upper bounds as far as specimens are independent and the spread is that of the others, so that chance raises a query more rarely
/// than the limit says, and a coarse step raises none.
/// </summary>
internal static class ChanceAgreement
{
    /// <summary>Two results of one run vary less than the stated variation between runs; half of it is taken.</summary>
    private const double ShareWithinRun = 0.5;

    /// <summary>No coagulation test repeats itself better than this CV in percent, whatever is stated or not.</summary>
    public const double LeastCvPercent = 0.5;

    /// <summary>Share of a baseline within which other baselines are counted.</summary>
    private const double NearBaseline = 0.05;

    /// <summary>Median absolute deviation of a normal value, times this, is its standard deviation.</summary>
    private const double OfNormal = 1.4826;

    /// <summary>The chance that another specimen has the baseline of this one.</summary>
    /// <param name="baseline">The baseline.</param>
    /// <param name="alike">How many specimens have it and agree at every time; they do not vouch for themselves, but for one.</param>
    /// <param name="sorted">All baselines in order.</param>
    /// <param name="step">The step in which they are reported.</param>
    public static double OfBaseline(
        double baseline,
        int alike,
        ImmutableArray<double> sorted,
        double step
    )
    {
        var others = sorted.Length - alike + 1.0;
        var near = 1 + CountWithin(sorted, baseline, NearBaseline * baseline) - alike;
        var same = CountWithin(sorted, baseline, step / 2) - alike;
        return Math.Max(
            same / others,
            near / others * Math.Min(1, step / (2 * NearBaseline * baseline))
        );
    }

    /// <summary>The chance that another specimen with the same baseline has every later result of this one.</summary>
    /// <param name="series">The results of the specimen.</param>
    /// <param name="spreads">As <see cref="Spreads"/>.</param>
    /// <param name="step">The step in which they are reported.</param>
    public static double OfLater(ResultSeries series, ImmutableArray<double> spreads, double step)
    {
        var chance = 1.0;
        for (var place = 1; place < series.Values.Length; place++)
        {
            chance *= OnStep(step, spreads[place - 1] * series.MeanBefore(place));
        }

        return chance;
    }

    /// <summary>The relative spread of each later result about the earlier ones, over the specimens.</summary>
    public static ImmutableArray<double> Spreads(ImmutableArray<ResultSeries> all) =>
        [
            .. Enumerable
                .Range(1, all[0].Values.Length - 1)
                .Select(place =>
                    Math.Min(
                        Spread(all, place, series => series.MeanBefore(place)),
                        Spread(all, place, series => (double)series.Values[place - 1])
                    )
                ),
        ];

    /// <summary>The chance that a measured plasma gives the same result at every time.</summary>
    /// <param name="analyte">The analyte, whose between-run CV is known or not.</param>
    /// <param name="value">The result.</param>
    /// <param name="times">At how many times.</param>
    /// <param name="step">The step in which results are reported.</param>
    public static double OfTimes(Analyte analyte, decimal value, int times, double step)
    {
        var deviation = DeviationWithinRun(analyte, value);
        var chance = 1.0;
        for (var before = 1; before < times; before++)
        {
            chance *= OnStep(step, deviation * Math.Sqrt(1 + (1.0 / before)));
        }

        return chance;
    }

    private static double DeviationWithinRun(Analyte analyte, decimal value) =>
        Math.Max(LeastCvPercent, ShareWithinRun * (double)(analyte.BetweenRunCvPercent ?? 0))
        / 100
        * (double)Math.Abs(value);

    private static double OnStep(double step, double deviation) =>
        deviation == 0 ? 1 : Math.Min(1, step / (deviation * Math.Sqrt(2 * Math.PI)));

    private static double Spread(
        ImmutableArray<ResultSeries> all,
        int place,
        Func<ResultSeries, double> expected
    )
    {
        double[] apart =
        [
            .. all.Select(series =>
                ((double)series.Values[place] - expected(series)) / expected(series)
            ),
        ];
        var middle = Middle(apart);
        return OfNormal * Middle([.. apart.Select(one => Math.Abs(one - middle))]);
    }

    private static int CountWithin(ImmutableArray<double> sorted, double middle, double half) =>
        CountUpTo(sorted, middle + half) - CountUpTo(sorted, middle - half);

    private static int CountUpTo(ImmutableArray<double> sorted, double highest)
    {
        var (from, to) = (0, sorted.Length);
        while (from < to)
        {
            var middle = (from + to) / 2;
            (from, to) = sorted[middle] <= highest ? (middle + 1, to) : (from, middle);
        }

        return from;
    }

    /// <summary>The median; the values are sorted.</summary>
    public static double Middle(double[] values)
    {
        Array.Sort(values);
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }
}
