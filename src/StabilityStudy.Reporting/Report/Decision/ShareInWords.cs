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

    private static decimal[] Shares(StudyAnalysis analysis) =>
        [
            .. analysis
                .Protocol.Criteria.OfType<IndividualCriterion>()
                .Select(criterion => criterion.SharePercentMinimum)
                .Distinct()
                .Order(),
        ];
}
