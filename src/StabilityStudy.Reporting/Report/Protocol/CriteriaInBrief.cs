using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Planning;
using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>Each criterion as whoever approves it reads it: what may move, how far, and when that is shown.</summary>
internal sealed record CriteriaInBrief(StudyPlan Plan)
{
    private const int LongestInTerm = 16;
    private const string Otherwise = "otherwise inconclusive.";

    private StudyProtocol Protocol => Plan.Protocol;

    /// <summary>A statement a criterion; with few limits each is followed by its source and by what else could have been chosen.</summary>
    public ImmutableArray<Definition> Statements()
    {
        var withSources = LimitSources.FitBeside(Protocol);
        var told = new HashSet<string>(StringComparer.Ordinal);
        return
        [
            .. Protocol.Criteria.Select(criterion =>
            {
                var (what, when) = Words(criterion);
                var allowed = Allowed(criterion);
                var isShort = allowed.All(item => item.Limit == allowed[0].Limit);
                // A limit of two parts would make the term longer than what it stands beside.
                isShort &= allowed.Length == 0 || allowed[0].Limit.Length <= LongestInTerm;
                return new Definition(
                    allowed.Length > 0 && isShort ? $"{what}: {allowed[0].Limit}" : what,
                    $"{Subjects(criterion, isShort, allowed)}{when}"
                )
                {
                    Aside = withSources
                        ? string.Join(
                            " ",
                            criterion
                                .Limits.Select(choice => choice.Limit)
                                .OfType<string>()
                                .Distinct()
                                .Where(told.Add)
                                .Select(id => LimitSources.Of(Protocol, id))
                        )
                        : "",
                };
            }),
        ];
    }

    private (string What, string When) Words(Criterion criterion) =>
        criterion.Kind switch
        {
            CriterionKind.Bias => Mean((BiasCriterion)criterion),
            CriterionKind.Individual => Each((IndividualCriterion)criterion),
            CriterionKind.DecisionLevel => Levels((DecisionLevelCriterion)criterion),
            CriterionKind.Reclassification => Sides((ReclassificationCriterion)criterion),
            CriterionKind.Classification => Classes((ClassificationCriterion)criterion),
            CriterionKind.Drift => Course((DriftCriterion)criterion),
        };

    private static (string, string) Mean(BiasCriterion criterion) =>
        (
            "How far the mean may move",
            criterion.Rule switch
            {
                DecisionRule.PointOnly =>
                    $"Met when the mean change lies inside ({CriterionWords.EstimateAlone}); not met when it does not.",
                DecisionRule.Confidence =>
                    $"Met when the whole {NumberText.Percent(criterion.ConfidenceLevel)} interval of the mean change lies inside; not met when it lies wholly outside; {Otherwise}",
            }
        );

    private (string, string) Each(IndividualCriterion criterion) =>
        (
            "How far one specimen may move",
            criterion.Rule switch
            {
                DecisionRule.PointOnly =>
                    $"Met when {Of100(criterion.SharePercentMinimum)} specimens stay inside ({CriterionWords.EstimateAlone}); not met when they do not.",
                DecisionRule.Confidence =>
                    $"Met when one can be {NumberText.Percent(criterion.ConfidenceLevel)} sure that at least {Of100(criterion.SharePercentMinimum)} specimens stay inside{Failures(criterion, "lie outside")}; not met when one can be as sure of the opposite; {Otherwise} A tube that clots, or gives no result after waiting, counts as outside.",
            }
        );

    private (string, string) Levels(DecisionLevelCriterion criterion) =>
        (
            "How far the mean may move at a decision level",
            $"{LevelsOf(criterion)}Met when at every level the {NumberText.Percent(criterion.ConfidenceLevel)} interval of the predicted change lies inside; not met when at one of them it lies wholly outside; {Otherwise}"
        );

    private (string, string) Sides(ReclassificationCriterion criterion) =>
        (
            criterion.Direction switch
            {
                SideDirection.Both => "How many may change the side of a decision level",
                SideDirection.Down => "How many may fall below a decision level",
                SideDirection.Up => "How many may rise to or above a decision level",
            },
            $"{LevelsOf(criterion)}Met when one can be {NumberText.Percent(criterion.ConfidenceLevel)} sure that at most {Of100(criterion.SharePercentMaximum)} specimens do so clearly{Failures(criterion, "do so")}; not met when one can be as sure of the opposite; {Otherwise} Clearly: by more than {(criterion.ZoneInUnit is { } zone ? $"{NumberText.Plain(zone)} in the unit" : "imprecision explains")}.{(criterion.LevelsTogether ? " The same is asked of those that do so at any of the levels, each counted once." : "")}{Near(criterion)}"
        );

    private static string Near(ReclassificationCriterion criterion) =>
        criterion.Near is { } near
            ? $" Only baselines from {NumberText.Plain(near.Lowest)} to {NumberText.Plain(near.Highest)} count, at least {NumberText.Count(near.SpecimensMinimum)} of them."
            : "";

    private (string, string) Classes(ClassificationCriterion criterion) =>
        (
            "How many must keep their class",
            $"Met when one can be {NumberText.Percent(criterion.ConfidenceLevel)} sure that at least {Of100(criterion.SharePercentMinimum)} specimens keep it{Failures(criterion, "change it")}; not met when one can be as sure of the opposite; {Otherwise}{(criterion.WeakPositivesMinimum == 0 ? "" : $" At least {NumberText.Count(criterion.WeakPositivesMinimum)} baselines must lie in the class just above the lowest.")}"
        );

    private static (string, string) Course(DriftCriterion criterion) =>
        (
            "How far the course over time may lead",
            $"Met when the {NumberText.Percent(criterion.ConfidenceLevel)} interval of the mean change that the course over all times predicts lies inside, for each assumed course ({string.Join("; ", criterion.Shapes.Select(TradeWords.CourseOf))}); not met when it lies wholly outside for one of them; {Otherwise}"
        );

    /// <summary>The limit of each analyte that it holds; empty for one that counts changes of side or class.</summary>
    private ImmutableArray<(string Analyte, string Limit)> Allowed(Criterion criterion) =>
        [
            .. from choice in criterion.Limits
            join limit in Protocol.Limits on choice.Limit equals limit.Id
            let analyte = Protocol.Analytes.First(item => item.Id == choice.Analyte)
            select (
                choice.Analyte,
                CriterionWords.Shortened(TradeWords.Of(limit, analyte.ShownUnit))
            ),
        ];

    /// <summary>Which analytes and groups it is about, and the limit of each, where that is not plain.</summary>
    private string Subjects(
        Criterion criterion,
        bool isShort,
        ImmutableArray<(string Analyte, string Limit)> allowed
    )
    {
        string?[] parts =
        [
            !isShort && Protocol.Analytes.Length == 1 ? allowed[0].Limit
            : !isShort
                ? string.Join(
                    "; ",
                    allowed
                        .GroupBy(item => item.Limit)
                        .Select(same =>
                            $"{string.Join(", ", same.Select(item => item.Analyte))} {same.Key}"
                        )
                )
            : criterion.Limits.Length < Protocol.Analytes.Length
                ? string.Join(", ", criterion.Limits.Select(choice => choice.Analyte))
            : null,
            criterion.Groups.IsEmpty
                ? null
                : string.Join(
                    ", ",
                    Protocol
                        .Groups.Where(group => criterion.Groups.Contains(group.Id))
                        .Select(group => TradeWords.InSentence(group.Name))
                ),
        ];
        var subjects = string.Join(", ", parts.OfType<string>());
        return subjects.Length == 0 ? "" : TradeWords.Capital(subjects) + ". ";
    }

    private string LevelsOf(Criterion criterion)
    {
        var levels = criterion
            .Limits.Select(choice => Protocol.Analytes.First(item => item.Id == choice.Analyte))
            .Select(analyte =>
                (
                    analyte,
                    Levels: criterion.JudgedLevels is { IsEmpty: false } own
                        ? own
                        : analyte.DecisionLevels
                )
            )
            .Where(item => !item.Levels.IsEmpty)
            .Select(item =>
                (Protocol.Analytes.Length > 1 ? item.analyte.Id + " " : "")
                + $"{string.Join(", ", item.Levels.Select(NumberText.Plain))} {item.analyte.ShownUnit}".TrimEnd()
            )
            .ToArray();
        return levels.Length == 0 ? "" : $"Levels: {string.Join("; ", levels)}. ";
    }

    /// <summary>": of 50 specimens 3 may lie outside".</summary>
    private string Failures(Criterion criterion, string fail)
    {
        var allowed = Plan
            .Rows.SelectMany(row => row.Shares.Where(item => item.Criterion == criterion.Id))
            .Select(item =>
                item.Allowed is { } most
                    ? $"of {NumberText.Count(item.Specimens)} specimens {(most == 0 ? "none" : NumberText.Count(most))} may {fail}"
                    : $"{NumberText.Count(item.Specimens)} specimens are too few for that, {NumberText.Count(item.NextSpecimens)} are needed"
            )
            .Distinct()
            .ToArray();
        return allowed.Length == 0 ? "" : $" ({string.Join("; ", allowed)})";
    }

    private static string Of100(decimal percent) => $"{NumberText.Plain(percent)} of 100";
}
