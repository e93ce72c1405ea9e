using StabilityStudy.Reporting.Proving;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Pipeline.Proving.Published.Tolerance;

namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>Published lines and drifts.</summary>
internal static class RegressionCases
{
    public static IEnumerable<ProofCase> Compute() =>
        [Norris(), ThroughTheOrigin(), Sen(), ThreeBatches()];

    private static ProofCase Norris()
    {
        var table = PublishedTable.Of("nist_norris");
        var fit = OrdinaryLeastSquares.Fit(table.Numbers("x"), table.Numbers("y"), 0.95).Value;
        return new ProofCase(
            "Least squares (NIST, Norris)",
            "NIST Statistical Reference Datasets, linear regression, Norris, 36 values (public domain), certified to 15 digits.",
            "what sums of doubles in two passes keep.",
            [
                Within(1e-11).Figure("intercept", "-0.262323073774029", fit?.Intercept.Value),
                Within(1e-11)
                    .Figure(
                        "intercept, standard error",
                        "0.232818234301152",
                        fit?.Intercept.StandardError
                    ),
                Within(1e-12).Figure("slope", "1.00211681802045", fit?.Slope.Value),
                Within(1e-14)
                    .Figure(
                        "slope, standard error",
                        "0.000429796848199937",
                        fit?.Slope.StandardError
                    ),
                Within(1e-11)
                    .Figure(
                        "residual standard deviation",
                        "0.884796396144373",
                        fit?.ResidualStandardDeviation
                    ),
            ]
        );
    }

    private static ProofCase ThroughTheOrigin()
    {
        var table = PublishedTable.Of("nist_noint1");
        return new ProofCase(
            "Line through the origin (NIST, NoInt1)",
            "NIST Statistical Reference Datasets, linear regression, NoInt1, 11 values (public domain), certified to 15 digits.",
            "half of the last digit certified, and a little for the sums.",
            [
                Within(3e-14)
                    .Figure(
                        "slope",
                        "2.07438016528926",
                        OrdinaryLeastSquares.SlopeThroughOrigin(
                            table.Numbers("x"),
                            table.Numbers("y")
                        )
                    ),
            ]
        );
    }

    private static ProofCase Sen()
    {
        var table = PublishedTable.Of("sen1968_theil_sen");
        var pairs = ExactPairs.Create(table.Exact("x"), table.Exact("y"));
        var median = TheilSen.Fit(pairs, 0.93).Value;
        var symmetric = PassingBablok.Fit(pairs, 0.95).Value;
        return new ProofCase(
            "Median of slopes, Theil–Sen and Passing–Bablok (Sen 1968)",
            "Sen PK. Journal of the American Statistical Association 1968;63:1379, as carried in the SciPy test suite (BSD-3). No slope between two points is −1 or less, so that the slope of Passing and Bablok is the same; its interval by hand: C = 13.0501, M1 = 4.",
            "exact fractions.",
            [
                Equal.Figure("Theil–Sen, slope", "4", median?.Slope),
                Equal.Figure("Theil–Sen, intercept", "6", median?.Intercept),
                Share(1e-15).Figure("Theil–Sen, 93 %, lower bound", "26/7", median?.SlopeLower),
                Share(1e-15).Figure("Theil–Sen, 93 %, upper bound", "35/8", median?.SlopeUpper),
                Equal.Figure("Passing–Bablok, number of slopes", "21", symmetric?.SlopeCount),
                Equal.Figure("Passing–Bablok, slope", "4", symmetric?.Slope),
                Equal.Figure("Passing–Bablok, intercept", "6", symmetric?.Intercept),
                Share(1e-15)
                    .Figure("Passing–Bablok, 95 %, lower bound", "26/7", symmetric?.SlopeLower),
                Share(1e-15)
                    .Figure("Passing–Bablok, 95 %, upper bound", "35/8", symmetric?.SlopeUpper),
            ]
        );
    }

    private static ProofCase ThreeBatches()
    {
        var table = PublishedTable.Of("obenchain1990_stability");
        var fit = RandomSlope
            .Fit(
                [
                    .. table
                        .Rows.GroupBy(row => table.Whole(row, "batch"))
                        .Select(rows => new SpecimenResponses(
                            [.. rows.Select(row => table.Number(row, "month"))],
                            [.. rows.Select(row => table.Number(row, "y"))]
                        )),
                ],
                0.95
            )
            .Value;
        return new ProofCase(
            "Drift of three batches, random slopes by REML (Obenchain 1990)",
            "Obenchain (1990), simulated stability of three batches, 84 values, as printed in the manual of a general statistics package with four digits (from memory); further digits by lme4 of R.",
            "the search of lme4 stops early in the variances.",
            [
                Equal.Figure("number of results", "84", fit?.ResultCount),
                Within(1e-4).Figure("intercept", "102.7038", fit?.Intercept),
                Within(2e-6).Figure("slope", "-0.525945", fit?.Slope),
                Within(1e-5).Figure("slope, standard error", "0.119368", fit?.SlopeStandardError),
                Within(5e-4).Figure("variance of intercepts", "0.976461", fit?.InterceptVariance),
                Within(1e-5).Figure("variance of slopes", "0.037162", fit?.SlopeVariance),
                Within(5e-5)
                    .Figure(
                        "covariance",
                        "-0.104444",
                        fit?.Correlation
                            * Math.Sqrt((fit?.InterceptVariance ?? 0) * (fit?.SlopeVariance ?? 0))
                    ),
                Within(1e-4).Figure("residual variance", "3.293257", fit?.ResidualVariance),
                Within(1e-4)
                    .Figure(
                        "−2 restricted log-likelihood",
                        "350.3281",
                        -2 * fit?.RestrictedLogLikelihood
                    ),
            ]
        );
    }
}
