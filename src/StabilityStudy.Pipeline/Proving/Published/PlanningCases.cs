using StabilityStudy.Reporting.Proving;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;
using static StabilityStudy.Pipeline.Proving.Published.Tolerance;

namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>Published powers and sample sizes.</summary>
internal static class PlanningCases
{
    /// <summary>No published total is half as large.</summary>
    private const int MostOfASequence = 60;

    private static readonly ImmutableArray<(
        double Effect,
        int Count,
        bool IsTwoSided,
        string Power
    )> s_powers =
    [
        (0.2, 20, true, "0.1359562887679666"),
        (1, 30, true, "0.9995636009612725"),
        (1, 30, false, "0.999892010204909"),
        (0.05, 20, false, "0.0764888785042198"),
    ];

    public static IEnumerable<ProofCase> Compute() =>
        [SizesWithoutFailures(), Crossover(), Powers()];

    private static ProofCase SizesWithoutFailures() =>
        new(
            "Specimens without a failure that show a share",
            "Known sizes (from memory) for 95 % confidence; they follow by hand: the smallest n at which the share to the power of n is at most 0.05.",
            "whole numbers.",
            [
                .. new[] { (0.85, "19"), (0.90, "29"), (0.95, "59") }.Select(item =>
                    Equal.Figure(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"share of {100 * item.Item1} %"
                        ),
                        item.Item2,
                        SmallestN.Reaching(
                            0.99,
                            n => IndividualPower.Of(n, 1, item.Item1, 0.95),
                            1,
                            100
                        )
                    )
                ),
            ]
        );

    /// <summary>Two-period crossover: logarithms, limits 0.80 to 1.25, standard error σ·√(2/n), n − 2 degrees of freedom, n even.</summary>
    private static ProofCase Crossover()
    {
        var table = PublishedTable.Of("tost_sample_size_2x2");
        return new ProofCase(
            "Sample sizes for equivalence in a two-period crossover",
            "Table of the type of Diletti E, Hauschke D, Steinijans VW. International Journal of Clinical Pharmacology, Therapy and Toxicology 1991;29:1–8; limits 0.80 to 1.25 at 5 %; from memory, recomputed in R by integration.",
            "whole numbers.",
            [
                .. table.Rows.Select(row =>
                    Equal.Figure(
                        $"power {table.Text(row, "target_power")}, CV {table.Text(row, "cv")}, ratio {table.Text(row, "theta0")}",
                        table.Text(row, "n_total"),
                        2
                            * SmallestN.Reaching(
                                table.Number(row, "target_power"),
                                n =>
                                    PowerOf(
                                        n,
                                        table.Number(row, "cv"),
                                        table.Number(row, "theta0")
                                    ),
                                2,
                                MostOfASequence
                            )
                    )
                ),
            ]
        );

        static double PowerOf(int ofASequence, double cv, double ratio) =>
            EquivalencePower.OfStandardError(
                Math.Sqrt(Math.Log(1 + (cv * cv)) / ofASequence),
                (2 * ofASequence) - 2,
                Math.Log(ratio),
                Math.Log(0.8),
                Math.Log(1.25),
                0.9
            );
    }

    private static ProofCase Powers() =>
        new(
            "Power of one-sample t tests at 5 % (noncentral t distribution)",
            "R, as kept in the test suite of statsmodels (BSD-3).",
            "16 digits are printed, and the distribution is computed to 1e-12.",
            [
                .. s_powers.Select(item =>
                {
                    var degrees = item.Count - 1;
                    var noncentrality = item.Effect * Math.Sqrt(item.Count);
                    var critical = StudentT.Quantile(item.IsTwoSided ? 0.975 : 0.95, degrees);
                    return Within(1e-11)
                        .Figure(
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"effect {item.Effect}, n = {item.Count}, {(item.IsTwoSided ? "two" : "one")}-sided"
                            ),
                            item.Power,
                            1
                                - NoncentralT.Cdf(critical, degrees, noncentrality)
                                + (
                                    item.IsTwoSided
                                        ? NoncentralT.Cdf(-critical, degrees, noncentrality)
                                        : 0
                                )
                        );
                }),
            ]
        );
}
