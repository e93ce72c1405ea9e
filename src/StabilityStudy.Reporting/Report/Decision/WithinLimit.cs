using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What the limit of a single specimen and the required share mean for patients, in plain words.</summary>
internal static class WithinLimit
{
    /// <summary>Sentences; empty where no criterion is on single specimens.</summary>
    public static string Of(StudyAnalysis analysis)
    {
        var protocol = analysis.Protocol;
        var asked = (
            from criterion in protocol.Criteria.OfType<IndividualCriterion>()
            from choice in criterion.Limits
            let limit = protocol.Limits.FirstOrDefault(item => item.Id == choice.Limit)
            where limit is not null
            let unit = protocol.Analytes.First(item => item.Id == choice.Analyte).ShownUnit
            select (criterion, choice.Analyte, Limit: Near(limit, unit))
        ).ToImmutableArray();
        if (asked.IsEmpty)
        {
            return "";
        }

        var limits = asked
            .GroupBy(item => item.Limit)
            .Select(item =>
                (Limit: item.Key, Analytes: item.Select(one => one.Analyte).Distinct().ToArray())
            )
            .ToArray();
        var near =
            limits.Length == 1
                ? "within " + limits[0].Limit
                : $"within a share of it ({string.Join("; ", limits.Select(item => $"{string.Join(", ", item.Analytes)}: {item.Limit}"))})";
        var confidence = asked.Select(item => item.criterion.ConfidenceLevel).Distinct().ToArray();
        ImmutableArray<IndividualCriterion> criteria =
        [
            .. asked.Select(item => item.criterion).Distinct(),
        ];
        return $"the delayed result lies near its baseline, {near}. The study must show with {string.Join(" or ", confidence.Select(NumberText.Percent))} confidence that this holds for at least {Shares(analysis, criteria)}. {Choice(criteria, analysis.Facts.People)}";
    }

    /// <summary>Who chose the shares, and why: one sentence where one person chose them all, else one a choice.</summary>
    private static string Choice(
        ImmutableArray<IndividualCriterion> criteria,
        ImmutableArray<Person> people
    )
    {
        var choices = criteria.GroupBy(criterion => criterion.Rationale).ToImmutableArray();
        if (choices is [var one])
        {
            var areSeveral = criteria.DistinctBy(item => item.SharePercentMinimum).Count() > 1;
            return RationaleWords.Sentence(
                areSeveral ? "these shares" : "this share",
                one.Key,
                people
            );
        }

        var areAlike = choices
            .SelectMany(choice => choice.Select(item => item.SharePercentMinimum).Distinct())
            .GroupBy(share => share)
            .Any(same => same.Count() > 1);
        var choosers = choices.Select(choice => choice.Key.ChosenBy).Distinct().ToArray();
        return choosers is [{ } chooser] && choices.All(choice => choice.Key.Reason is not null)
            ? $"{TradeWords.Capital(RationaleWords.Who(chooser, people))} chose {ScopeWords.List(choices.Select(choice => $"{Chosen(choice, areAlike)} ({RationaleWords.Unstopped(choice.Key.Reason!)})"))}."
            : string.Join(
                " ",
                choices.Select(choice =>
                    RationaleWords.Sentence(
                        "the share of " + Chosen(choice, areAlike),
                        choice.Key,
                        people
                    )
                )
            );
    }

    /// <summary>"85 of 100", with the criterion where another choice has the same share.</summary>
    private static string Chosen(IEnumerable<IndividualCriterion> choice, bool withCriteria) =>
        ScopeWords.List(choice.Select(item => Of100(item.SharePercentMinimum)).Distinct())
        + (withCriteria ? $" of criterion {ScopeWords.List(choice.Select(item => item.Id))}" : "");

    /// <summary>"15 % of it (or 2 s, if that is more)".</summary>
    private static string Near(Limit limit, string unit) =>
        (limit.Percent, limit.AbsoluteInUnit) switch
        {
            ({ } percent, { } amount) =>
                $"{NumberText.Plain(percent)} % (or {NumberText.Plain(amount)} {unit}, if that is more)",
            ({ } percent, null) => $"{NumberText.Plain(percent)} %",
            (null, { } amount) => $"{NumberText.Plain(amount)} {unit}",
            _ => "the limit of the protocol",
        };

    /// <summary>"85 of 100 patients (90 of 100: Unfractionated heparin)": the share asked for most, and where it is another.</summary>
    private static string Shares(StudyAnalysis analysis, IEnumerable<IndividualCriterion> criteria)
    {
        var shares = criteria
            .GroupBy(criterion => criterion.SharePercentMinimum)
            .Select(share => (share.Key, Whom: Whom(analysis, share)))
            .OrderByDescending(share => share.Whom.Length)
            .ToArray();
        var others = shares
            .Skip(1)
            .Select(share =>
                $"{Of100(share.Key)}: {string.Join("; ", share.Whom.Select(TradeWords.InSentence))}"
            )
            .ToArray();
        return Of100(shares[0].Key)
            + " patients"
            + (others.Length == 0 ? "" : $" ({string.Join(", ", others)})");
    }

    private static string Of100(decimal share) => $"{NumberText.Plain(share)} of 100";

    private static string[] Whom(
        StudyAnalysis analysis,
        IEnumerable<IndividualCriterion> criteria
    ) =>
        [
            .. analysis
                .Sequences.Where(sequence =>
                    criteria.Any(criterion =>
                        criterion.AppliesTo(sequence.Group)
                        && criterion.Limits.Any(choice => choice.Analyte == sequence.Analyte)
                    )
                )
                .Select(sequence => SequenceNames.Of(analysis, sequence).Short(analysis))
                .Distinct(),
        ];
}
