using StabilityStudy.Reporting.Proving;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Outliers;
using static StabilityStudy.Pipeline.Proving.Published.Tolerance;

namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>Published means, standard deviations, rank methods, tests of normality and outlier search.</summary>
internal static class LocationCases
{
    /// <summary>File, name, mean, standard deviation, and the tolerance of the latter.</summary>
    private static readonly ImmutableArray<(
        string File,
        string Name,
        int Count,
        string Mean,
        string Deviation,
        double Share
    )> s_univariate =
    [
        ("lew", "Lew", 200, "-177.435", "277.332168044316", 1e-14),
        ("mavro", "Mavro", 50, "2.001856", "0.000429123454003053", 1e-11),
        ("lottery", "Lottery", 218, "518.958715596330", "291.699727470969", 1e-14),
        ("numacc1", "NumAcc1", 3, "10000002", "1", 0),
        ("numacc2", "NumAcc2", 1001, "1.2", "0.1", 1e-14),
        ("numacc3", "NumAcc3", 1001, "1000000.2", "0.1", 1e-8),
        ("numacc4", "NumAcc4", 1001, "10000000.2", "0.1", 1e-8),
    ];

    private static readonly ImmutableArray<(string Statistic, string Critical)> s_rosner =
    [
        ("3.118", "3.158"),
        ("2.942", "3.151"),
        ("3.179", "3.143"),
        ("2.810", "3.136"),
        ("2.815", "3.128"),
        ("2.848", "3.120"),
        ("2.279", "3.111"),
        ("2.310", "3.103"),
        ("2.101", "3.094"),
        ("2.067", "3.085"),
    ];

    public static IEnumerable<ProofCase> Compute() =>
        [Univariate(), Depression(), Normality(), Outliers()];

    private static ProofCase Univariate() =>
        new(
            "Mean and standard deviation (NIST, univariate)",
            "NIST Statistical Reference Datasets, univariate summary statistics (public domain), certified to 15 digits.",
            "what double precision keeps; NumAcc3 and NumAcc4 hold decimals near a million and ten million, whose nearest doubles have a standard deviation up to 6e-9 off already.",
            [
                .. s_univariate.SelectMany(set =>
                {
                    var found = ArithmeticMean
                        .WithInterval(PublishedTable.Of("nist_" + set.File).Numbers("y"), 0.95)
                        .Value;
                    return new[]
                    {
                        Equal.Figure(
                            $"{set.Name}, number of values",
                            set.Count.ToString(CultureInfo.InvariantCulture),
                            found?.Count
                        ),
                        Share(1e-14).Figure($"{set.Name}, mean", set.Mean, found?.Mean),
                        Share(set.Share)
                            .Figure(
                                $"{set.Name}, standard deviation",
                                set.Deviation,
                                found?.StandardDeviation
                            ),
                    };
                }),
            ]
        );

    private static ProofCase Depression()
    {
        var table = PublishedTable.Of("hollander_wolfe_depression");
        var (first, second) = (table.Exact("first"), table.Exact("second"));
        var shift = HodgesLehmann
            .WithInterval(ExactPairs.Create(second, first).Difference.AsSpan(), 0.95)
            .Value;
        var ranks = WilcoxonSignedRank.Compute(ExactPairs.Create(first, second)).Value;
        return new ProofCase(
            "Depression scores of nine patients (Hollander and Wolfe 1973)",
            "Hollander M, Wolfe DA. Nonparametric Statistical Methods, 1973; estimate and interval reproduced in R 4.2.2.",
            "decimal data, so that only the last bits may differ.",
            [
                Within(1e-12).Figure("Hodges–Lehmann estimate", "0.46", shift?.Value),
                Within(1e-12).Figure("lower bound", "0.010", shift?.Lower),
                Within(1e-12).Figure("upper bound", "0.786", shift?.Upper),
                Within(1e-15).Figure("confidence reached", "0.9609375", shift?.AchievedConfidence),
                Equal.Figure("signed ranks, sum of the increases", "5", ranks?.PositiveRankSum),
                Share(1e-14).Figure("signed ranks, two-sided p", "20/512", ranks?.PValue),
            ]
        );
    }

    private static ProofCase Normality()
    {
        var a = ShapiroWilk.Compute(Sample("a")).Value;
        var b = ShapiroWilk.Compute(Sample("b")).Value;
        return new ProofCase(
            "Normality of two samples (Shapiro and Wilk)",
            "Samples of the SciPy test suite (BSD-3), with values of R shapiro.test.",
            "14 digits are printed there.",
            [
                Within(1e-12).Figure("first sample, W", "0.90047287931756", a?.W),
                Within(1e-12).Figure("first sample, p", "0.04208957522226", a?.PValue),
                Within(1e-12).Figure("second sample, W", "0.95902694603234", b?.W),
                Within(1e-12).Figure("second sample, p", "0.5245979304707", b?.PValue),
            ]
        );

        static double[] Sample(string name) =>
            PublishedTable.Of("shapiro_wilk_scipy_n20" + name).Numbers("y");
    }

    private static ProofCase Outliers()
    {
        var values = PublishedTable.Of("rosner1983_esd").Numbers("y");
        var found = GeneralizedExtremeStudentizedDeviate.Find(values, s_rosner.Length, 0.05).Value;
        return new ProofCase(
            "Search for outliers (Rosner 1983)",
            "Rosner B. Technometrics 1983;25:165, as in the NIST/SEMATECH e-Handbook 1.3.5.17.3.",
            "three decimals are printed, some of them truncated instead of rounded.",
            [
                Equal.Figure("number of outliers", "3", found?.OutlierIndices.Length),
                .. s_rosner.SelectMany(
                    (printed, i) =>
                        new[]
                        {
                            Within(0.0015)
                                .Figure(
                                    string.Create(
                                        CultureInfo.InvariantCulture,
                                        $"step {i + 1}, statistic"
                                    ),
                                    printed.Statistic,
                                    found?.Steps[i].Statistic
                                ),
                            Within(0.0015)
                                .Figure(
                                    string.Create(
                                        CultureInfo.InvariantCulture,
                                        $"step {i + 1}, critical value"
                                    ),
                                    printed.Critical,
                                    found?.Steps[i].CriticalValue
                                ),
                        }
                ),
            ]
        );
    }
}
