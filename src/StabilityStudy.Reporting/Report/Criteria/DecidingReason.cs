namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Why a time point is concluded on as it is: the deciding figures with their intervals, and every doubt in words.</summary>
internal static class DecidingReason
{
    /// <summary>The reasons of a cell, joined; empty for a supported one.</summary>
    /// <param name="cell">The time point.</param>
    /// <param name="names">What its keys stand for.</param>
    /// <param name="protocol">The protocol.</param>
    /// <param name="withFigures">Whether the figures stand in the sentence, or beside it in a table.</param>
    public static string Of(
        Cell cell,
        SequenceNames names,
        StudyProtocol protocol,
        bool withFigures
    )
    {
        var deciding =
            cell.Conclusion == Conclusion.NotSupported ? Verdict.NotMet : Verdict.Inconclusive;
        return string.Join(
            "; ",
            cell.Doubts.Select(ReasonWords.Of)
                .Concat(
                    cell.Criteria.Where(result => result.Verdict == deciding)
                        .Select(result =>
                            CriterionWords.Of(result, names, protocol).Reason(cell, withFigures)
                        )
                )
        );
    }
}
