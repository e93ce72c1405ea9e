using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>What the report says of one criterion at one time point. Each kind of criterion has its own; <see cref="CriterionWords.Of"/> chooses it.</summary>
internal interface ICriterionWords
{
    /// <summary>What it asks of the time point, in one sentence.</summary>
    string Requirement { get; }

    /// <summary>The figure that decided it.</summary>
    string DecidingFigure { get; }

    /// <summary>The same as short as page 1 needs it, beside what it was held to: one figure, or one a level or shape.</summary>
    /// <param name="withLimits">Whether the allowable difference of single specimens stands beside the required share.</param>
    ImmutableArray<CriterionFigure> Figures(bool withLimits);

    /// <summary>Why it is not met or open.</summary>
    /// <param name="cell">The time point.</param>
    /// <param name="withFigures">Whether the figures stand in the sentence, or beside it in a table.</param>
    string Reason(Cell cell, bool withFigures);

    /// <summary>Its rows in the table of estimates.</summary>
    IEnumerable<Row> EstimateRows { get; }

    /// <summary>Its tables and figures on the page of the time point.</summary>
    IEnumerable<Block> Blocks(Cell cell, CellAxes axes);

    /// <summary>Its numbers worked out by hand; empty where that cannot be done.</summary>
    IEnumerable<Block> ByHand(Cell cell);
}

/// <summary>When a criterion is met and when it is not met, between which it is inconclusive.</summary>
/// <param name="MetWhen">After "met when".</param>
/// <param name="NotMetWhen">After "not met when".</param>
/// <param name="Doubts">What else makes it inconclusive, a sentence each.</param>
internal sealed record CriterionRuleWords(
    string MetWhen,
    string NotMetWhen,
    params ImmutableArray<string> Doubts
);

/// <summary>One figure that a criterion decided by, beside what it was held to, as short as page 1 needs it.</summary>
/// <param name="IsShare">Whether it counts specimens; otherwise it is a change.</param>
/// <param name="Found">The figure with its interval or bound.</param>
/// <param name="Required">The limit or the required share.</param>
/// <param name="Verdict">What it says.</param>
internal sealed record CriterionFigure(bool IsShare, string Found, string Required, Verdict Verdict)
{
    /// <summary>Shape of what it says.</summary>
    public VerdictShape Shape => TradeWords.ShapeOf(Verdict);
}
