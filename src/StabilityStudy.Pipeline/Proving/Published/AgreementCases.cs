using StabilityStudy.Reporting.Proving;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Proportions;
using static StabilityStudy.Pipeline.Proving.Published.Tolerance;

namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>Published limits of agreement, equivalence tests, tolerance factors and bounds of shares.</summary>
internal static class AgreementCases
{
    /// <summary>Number of subjects in one group of the clinic data.</summary>
    private const int ClinicGroup = 15;

    private static readonly ImmutableArray<(
        int Successes,
        int Trials,
        double Level,
        string Lower,
        string Upper,
        double Tolerance
    )> s_shares =
    [
        (20, 100, 0.95, "0.1266555521019559", "0.2918426890886281", 1e-13),
        (3, 50, 0.99, "0.006872485", "0.202706269", 5e-10),
        (0, 10, 0.95, "0", "0.3084971", 5e-8),
        (10, 10, 0.95, "0.6915029", "1", 5e-8),
    ];

    public static IEnumerable<ProofCase> Compute() =>
        [PeakFlow(), Equivalence(), ToleranceFactors(), Shares()];

    private static ProofCase PeakFlow()
    {
        var table = PublishedTable.Of("bland_altman_1986_pefr");
        double[] differences =
        [
            .. table.Numbers("wright1").Zip(table.Numbers("mini1"), (w, m) => w - m),
        ];
        var mean = ArithmeticMean.WithInterval(differences, 0.95).Value;
        var limits = LimitsOfAgreement.Compute(differences, 0.95).Value;
        return new ProofCase(
            "Peak flow of 17 subjects by two meters (Bland and Altman 1986)",
            "Bland JM, Altman DG. The Lancet 1986;1:307–310: data from a public copy, printed statistics from memory; six decimals recomputed in R 4.2.2.",
            "half of the last digit printed; limits of agreement are printed from a rounded mean and standard deviation and with the factor 2.",
            [
                Within(0.05).Figure("mean difference, L/min", "-2.1", mean?.Mean),
                Within(0.05).Figure("standard deviation", "38.8", mean?.StandardDeviation),
                Within(0.05).Figure("standard error", "9.4", mean?.StandardError),
                Within(0.05).Figure("mean, 95 %, lower bound", "-22.0", mean?.Lower),
                Within(0.05).Figure("mean, 95 %, upper bound", "17.8", mean?.Upper),
                Within(5e-7).Figure("mean difference, more digits", "-2.117647", limits?.Mean),
                Within(5e-7)
                    .Figure(
                        "standard deviation, more digits",
                        "38.765130",
                        limits?.StandardDeviation
                    ),
                Within(0.06)
                    .Figure(
                        "mean minus 2 standard deviations",
                        "-79.7",
                        limits?.Mean - (2 * limits?.StandardDeviation)
                    ),
                Within(0.1)
                    .Figure(
                        "mean plus 2 standard deviations",
                        "75.5",
                        limits?.Mean + (2 * limits?.StandardDeviation)
                    ),
            ]
        );
    }

    private static ProofCase Equivalence()
    {
        var first = Interval("var1", value => value);
        var second = Interval("var2", value => value);
        var logarithms = Interval("var1", Math.Log);
        return new ProofCase(
            "Equivalence of paired measurements (clinic data)",
            "\"Clinic\" data of the test suite of statsmodels (BSD-3), test_tost.py, with p values and intervals of R; rows 1–15 and 16–30 as pairs, limits ±0.6 and log 1.25.",
            "10 to 16 digits are printed there.",
            [
                Share(1e-13).Figure("var1, mean", "0.1646666666666667", first?.Mean),
                Share(1e-13)
                    .Figure("var1, standard error", "0.1357514067862445", first?.StandardError),
                Share(1e-11).Figure("var1, 90 %, lower bound", "-0.0744336620516462", first?.Lower),
                Share(1e-12).Figure("var1, 90 %, upper bound", "0.4037669953849797", first?.Upper),
                Share(1e-11).Figure("var1, p", "0.003166881489265175", P(first, 0.6)),
                Share(1e-13).Figure("var2, mean", "0.5626666666666665", second?.Mean),
                Share(1e-13)
                    .Figure("var2, standard error", "0.2478276410785118", second?.StandardError),
                Within(5e-11).Figure("var2, 90 %, lower bound", "0.1261653305", second?.Lower),
                Within(5e-11).Figure("var2, 90 %, upper bound", "0.9991680028", second?.Upper),
                Share(1e-11).Figure("var2, p", "0.4412034046017588", P(second, 0.6)),
                Share(1e-12)
                    .Figure("var1, logarithms, mean", "0.0431223318225235", logarithms?.Mean),
                Share(1e-12)
                    .Figure(
                        "var1, logarithms, standard error",
                        "0.03819576328421437",
                        logarithms?.StandardError
                    ),
                Share(1e-10)
                    .Figure(
                        "var1, logarithms, p",
                        "0.0001664157928976468",
                        P(logarithms, Math.Log(1.25))
                    ),
            ]
        );

        static MeanInterval? Interval(string variable, Func<double, double> scale)
        {
            var column = PublishedTable.Of("tost_clinic_statsmodels").Numbers(variable);
            return ArithmeticMean
                .WithInterval(
                    [
                        .. Enumerable
                            .Range(0, ClinicGroup)
                            .Select(i => scale(column[i]) - scale(column[i + ClinicGroup])),
                    ],
                    0.9
                )
                .Value;
        }

        static double? P(MeanInterval? interval, double limit) =>
            interval is null
                ? null
                : TwoOneSidedTests
                    .Compute(
                        interval.Mean,
                        interval.StandardError,
                        interval.DegreesOfFreedom,
                        -limit,
                        limit
                    )
                    .Value?.PValue;
    }

    private static ProofCase ToleranceFactors()
    {
        var table = PublishedTable.Of("tolerance_factors_normal");
        var six = Within(6e-7);
        return new ProofCase(
            "Tolerance factors of a normal distribution",
            "NIST/SEMATECH e-Handbook 7.2.6.3 (Howe, n = 43; one-sided, n = 50); ISO 16269-6 (from memory) for the exact two-sided factors; further digits computed in R by numerical integration.",
            "half of the last of six decimals, and a little for its rounding.",
            [
                .. table.Rows.SelectMany(row =>
                {
                    var n = table.Whole(row, "n");
                    var coverage = table.Number(row, "coverage");
                    var level = table.Number(row, "confidence");
                    var of =
                        $"n = {table.Text(row, "n")}, share {table.Text(row, "coverage")}, confidence {table.Text(row, "confidence")}";
                    return new[]
                    {
                        six.Figure(
                            $"{of}: two-sided",
                            table.Text(row, "k2_exact"),
                            ToleranceFactor.TwoSided(n, coverage, level)
                        ),
                        six.Figure(
                            $"{of}: two-sided by Howe",
                            table.Text(row, "k2_howe"),
                            ToleranceFactor.Howe(n, coverage, level)
                        ),
                        six.Figure(
                            $"{of}: one-sided",
                            table.Text(row, "k1_one_sided"),
                            ToleranceFactor.OneSided(n, coverage, level)
                        ),
                    };
                }),
            ]
        );
    }

    private static ProofCase Shares() =>
        new(
            "Exact bounds of a share (Clopper and Pearson)",
            "R binom.test, as kept in the SciPy test suite (BSD-3).",
            "half of the last digit printed there.",
            [
                .. s_shares.SelectMany(item =>
                {
                    var bounds = ClopperPearson.Bounds(item.Successes, item.Trials, item.Level);
                    var of = string.Create(
                        CultureInfo.InvariantCulture,
                        $"{item.Successes} of {item.Trials}, {100 * item.Level} %"
                    );
                    return new[]
                    {
                        Within(item.Tolerance)
                            .Figure($"{of}: lower bound", item.Lower, bounds.TwoSidedLower),
                        Within(item.Tolerance)
                            .Figure($"{of}: upper bound", item.Upper, bounds.TwoSidedUpper),
                    };
                }),
                Within(5e-8)
                    .Figure(
                        "0 of 10, 95 %: one-sided upper bound",
                        "0.2588656",
                        ClopperPearson.Bounds(0, 10, 0.95).OneSidedUpper
                    ),
                Within(5e-8)
                    .Figure(
                        "10 of 10, 95 %: one-sided lower bound",
                        "0.7411344",
                        ClopperPearson.Bounds(10, 10, 0.95).OneSidedLower
                    ),
            ]
        );
}
