using StabilityStudy.Core.Criteria.Individual;
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
        return $"the delayed result lies near its baseline, {near}. The study must show with {string.Join(" or ", confidence.Select(NumberText.Percent))} confidence that this holds for at least {Shares(analysis, asked.Select(item => item.criterion).Distinct())}.";
    }

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
