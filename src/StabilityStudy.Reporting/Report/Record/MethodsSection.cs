using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Estimates;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Methods and references.</summary>
internal static class MethodsSection
{
    public const string Title = "Methods and references";

    private static readonly ImmutableArray<string> s_references =
    [
        "Bland JM, Altman DG. Lancet 1986;327:307–310.",
        "Clopper CJ, Pearson ES. Biometrika 1934;26:404–413.",
        "Hollander M, Wolfe DA. Nonparametric Statistical Methods. Wiley 1973.",
        "Hurvich CM, Tsai CL. Biometrika 1989;76:297–307.",
        "Laird NM, Ware JH. Biometrics 1982;38:963–974.",
        "Linnet K. Stat Med 1990;9:1463–1473; Clin Chem 1993;39:424–432.",
        "Passing H, Bablok W. J Clin Chem Clin Biochem 1983;21:709–720.",
        "Patterson HD, Thompson R. Biometrika 1971;58:545–554.",
        "Rosner B. Technometrics 1983;25:165–172.",
        "Schuirmann DJ. J Pharmacokinet Biopharm 1987;15:657–680.",
    ];

    private static readonly ImmutableArray<string> s_ofFurther =
    [
        "Efron B. J Am Stat Assoc 1987;82:171–185.",
        "Hyndman RJ, Fan Y. Am Stat 1996;50:361–365.",
        "Kendall MG. Biometrika 1945;33:239–251.",
        "Lin LI. Biometrics 1989;45:255–268; correction 2000;56:324–325.",
        "Royston P. Appl Stat 1995;44:547–551.",
        "Sen PK. J Am Stat Assoc 1968;63:1379–1389.",
        "Wald A, Wolfowitz J. Ann Math Stat 1946;17:208–215.",
        "Wilcoxon F. Biometrics Bull 1945;1:80–83.",
    ];

    /// <summary>The section.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="full">Whether the estimates are shown that neither decide nor describe what decides.</param>
    public static Section Of(StudyAnalysis analysis, bool full) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Bullets([.. Methods(analysis, full)]),
                new Heading("References"),
                new Paragraph(
                    "Of the field, of papers the abstract seen: "
                        + string.Join(
                            " · ",
                            FieldReferences.Of(analysis).Select(reference => reference.Entry)
                        ),
                    ParagraphStyle.Small
                ),
                new Paragraph(
                    "Of statistics, with volumes and pages from memory where the paper could not be seen (see METHODS.md): "
                        + string.Join(
                            " · ",
                            full ? [.. s_references, .. s_ofFurther] : s_references
                        ),
                    ParagraphStyle.Small
                ),
            ]
        );

    private static IEnumerable<string> Methods(StudyAnalysis analysis, bool full)
    {
        yield return "Mean change: arithmetic mean with Student t intervals by specimens (n − 1 degrees of freedom), by collection days, by baseline runs, by delayed runs and by persons (clusters − 1, means of clusters unweighted), and, where runs cross, by both kinds of run: variance SE²(baseline runs) + SE²(delayed runs) − SE²(their pairs), degrees of freedom of the fewer runs (Cameron, Gelbach and Miller 2011). Each half is lengthened for skewness (Hall 1992). The smallest interval that holds all of them counts; strictly inside the limits it is the two one-sided tests procedure (Schuirmann 1987). Differences, ties and comparisons with limits are decided exactly on the decimal results as reported.";
        yield return "Value at collection, where changes count from there: x₀ = x − (y − x)·f(t₀)/(f(t) − f(t₀)), with f(t) = ln(1 + t/1 h) and the specimen's own baseline delay t₀ and delay t. Bridging plasma: the delayed result is divided by the ratio of what its run and the baseline's run read in it.";
        yield return "Single specimens: share within the allowable difference, limits included, with exact binomial bounds (Clopper and Pearson 1934). What the runs could by chance have added: for days, baseline runs, delayed runs and persons alike, t at the criterion's confidence with one degree of freedom fewer than clusters (with fewer than eight, at half the error), times the standard error that specimens of a cluster share, √(s²·Σm²)/n with s² = (MSB − MSW)·(D − 1)/(n − Σm²/n), m the specimens of each of D clusters, n = Σm, MSB and MSW the mean squares between and within them; the largest counts.";
        if (analysis.Protocol.Criteria.Any(criterion => criterion is DecisionLevelCriterion))
        {
            yield return "Decision levels: change predicted by the weighted Deming line, with jackknife intervals of that prediction itself over specimens and every clustering, the widest of which counts, lengthened for skewness; beside it the change on either side of the level, from a line that may step there.";
        }

        yield return $"What describes: limits of agreement, mean ± 1.96 SD (Bland and Altman 1986), with exact intervals from the noncentral t distribution; Hodges–Lehmann estimate and median with exact rank intervals (Hollander and Wolfe 1973); weighted Deming with jackknife intervals (Linnet 1990, 1993; ratio of error variances: {Ratios(analysis)}), Passing and Bablok (1983); outliers by the generalized extreme Studentized deviate test at {NumberText.Percent(CellEstimates.OutlierSignificance)} (Rosner 1983); changes of side expected from imprecision, by the between-run CV of the protocol and the distance of each baseline from the level.";
        yield return "Drift: slope per specimen through its own baseline, mean slope with one-sided bounds as for the mean. Mixed model: restricted maximum likelihood (Patterson and Thompson 1971; Laird and Ware 1982) on 100·ln(result), AICc from full maximum likelihood (Hurvich and Tsai 1989).";
        if (full)
        {
            yield return "Further estimates: Deming, ordinary least squares, percentiles (Hyndman and Fan 1996), exact two-sided tolerance factor (Wald and Wolfowitz 1946), Shapiro–Wilk (Royston 1995), exact signed ranks (Wilcoxon 1945), Theil–Sen (Sen 1968), BCa bootstrap (Efron 1987), also of the change at decision levels by Passing–Bablok, τ-b (Kendall 1945), concordance (Lin 1989).";
            yield return "What simulations gave for a wrong \"mean inside the limit\" with the truth exactly at the limit and a nominal 5 %, 40 specimens: results of ten days in ten runs of either side 4.4 %, in five delayed runs 3.3 %, since collection with baselines at 15 to 60 minutes 3.7 to 4.7 %, runs moved by 2 to 3 % and bridged 3.9 to 4.1 %. For a wrong \"enough specimens within the limit\" 1.4 to 2.9 %, with half to all of the unstable ones lost 4.6 to 5.3 %. Specimens so rare that the sample holds none are seen by no interval. In a simulation with delays and slopes that differ between specimens, a bound of the drift failed about 5 times in a hundred, as it should.";
        }

        yield return "Each method is defined, with assumptions, choices, simulated error rates and tests, in METHODS.md beside the program's source code.";
    }

    private static string Ratios(StudyAnalysis analysis) =>
        string.Join(
            ", ",
            analysis.Protocol.Analytes.Select(analyte =>
                $"{analyte.Id} {NumberText.Plain(analyte.ErrorVarianceRatio)}"
            )
        );
}
