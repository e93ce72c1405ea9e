using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What a required share means for patients, in plain words.</summary>
internal static class ShareInWords
{
    /// <summary>One sentence with a space before it; nothing where no criterion is on single specimens.</summary>
    public static string Of(StudyAnalysis analysis)
    {
        var shares = Shares(analysis);
        var beyond = string.Join(" or ", shares.Select(share => NumberText.Plain(100 - share)));
        return shares.Length == 0
            ? ""
            : $" Required {string.Join(" or ", shares.Select(share => NumberText.Plain(share) + " %"))}: up to {beyond} of 100 such patients' results may change by more than the limit of a single specimen.";
    }

    /// <summary>The same for a table that does not show what is required: every share but the lowest with the analytes and groups it is asked for.</summary>
    public static string WithNames(StudyAnalysis analysis) =>
        Of(analysis)
        + string.Concat(
            Shares(analysis)
                .Skip(1)
                .Select(share =>
                    $" {NumberText.Plain(share)} % is required of {string.Join(", ", Asked(analysis, share))}."
                )
        );

    private static decimal[] Shares(StudyAnalysis analysis) =>
        [
            .. analysis
                .Protocol.Criteria.OfType<IndividualCriterion>()
                .Select(criterion => criterion.SharePercentMinimum)
                .Distinct()
                .Order(),
        ];

    private static IEnumerable<string> Asked(StudyAnalysis analysis, decimal share) =>
        analysis
            .Sequences.Where(sequence =>
                analysis
                    .Protocol.Criteria.OfType<IndividualCriterion>()
                    .Any(criterion =>
                        criterion.SharePercentMinimum == share
                        && criterion.AppliesTo(sequence.Group)
                        && criterion.Limits.Any(choice => choice.Analyte == sequence.Analyte)
                    )
            )
            .Select(sequence => SequenceNames.Of(analysis, sequence).Code(analysis));
}
