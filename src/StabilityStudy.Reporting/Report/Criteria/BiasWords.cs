using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of a criterion on the mean change.</summary>
internal sealed record BiasWords(BiasResult Result, SequenceNames Names, StudyProtocol Protocol)
    : ICriterionWords
{
    private const int PercentDecimals = 2;
    private const int LogRatioDecimals = 4;

    public static CriterionRuleWords OfRule(BiasCriterion criterion, StudyProtocol protocol)
    {
        ImmutableArray<string> doubts =
        [
            $"Mean, days and runs: inconclusive with fewer than {NumberText.Count(protocol.MinimumDays)} collection days, baseline runs or delayed runs; runs are not counted where both tubes of every pair were tested in one recorded run, at most {DurationText.Format(protocol.OneRunWithin)} apart.",
            "Mean, skewness and spread: skewness lengthens the interval; inconclusive with fewer than three changes, from which it cannot be computed, or when all changes are the same to the last reported digit.",
            "Mean: met only if the interval, which spans those by specimens, collection days, runs and persons, lies strictly inside the limit; not met only if it lies wholly at the limit or beyond; otherwise inconclusive. Readings: met only if the interval is inside as measured, and also since collection where the protocol counts from there, and corrected by the bridging plasma where one was tested; not met only if it is wholly beyond in every one.",
            "Mean, level: inconclusive when the change depends on the level and the change predicted at an end of the range is not shown to be inside the limit; asked where the SD of the logarithm of the baselines is at least 0.20 and no criterion judges levels.",
            "Mean, uncounted pairs: inconclusive when specimens failed, lie beyond the measuring interval or lack a delayed result, and no other criterion counts them.",
        ];
        return criterion.Rule switch
        {
            DecisionRule.PointOnly => new(
                $"the mean change lies strictly inside the limit ({CriterionWords.EstimateAlone}).",
                "the mean change is at the limit or beyond.",
                doubts
            ),
            DecisionRule.Confidence => new(
                $"the {NumberText.Percent(criterion.ConfidenceLevel)} interval of the mean change{OnScale(criterion.Scale)} lies strictly inside the limit. It spans the intervals by specimens, collection days, runs and persons.",
                "the whole interval is at the limit or beyond.",
                doubts
            ),
        };
    }

    public string Requirement =>
        IsEstimateAlone
            ? $"The mean change lies strictly inside {Allowed} ({CriterionWords.EstimateAlone})."
            : $"The {NumberText.Percent(Result.ConfidenceLevel)} interval of the mean change lies strictly inside {Allowed}.";

    /// <summary>Mean with its interval: "+4.38 (+3.20 to +5.61) %"; says so when there is none.</summary>
    public string DecidingFigure =>
        Result.Mean.TryGet(out var mean)
            ? $"{Number(mean.Mean)} ({Ends(mean.Lower, mean.Upper)}) {Unit}"
            : "not computable";

    public ImmutableArray<CriterionFigure> Figures(bool withLimits) =>
        [
            new(
                false,
                DecidingFigure,
                AllowedInBrief + (IsEstimateAlone ? ", " + CriterionWords.NoErrorControl : ""),
                Result.Verdict
            ),
        ];

    public string Reason(Cell cell, bool withFigures) =>
        new BiasReason(this, cell).InWords(withFigures);

    public IEnumerable<Row> EstimateRows => BiasRows.Of(this);

    public IEnumerable<Block> Blocks(Cell cell, CellAxes axes) => [];

    public IEnumerable<Block> ByHand(Cell cell) => BiasByHand.Of(this, cell);

    /// <summary>Whether the mean alone is held to the limit.</summary>
    public bool IsEstimateAlone => CriterionWords.IsEstimateAlone(Result, Protocol);

    /// <summary>A change with its unit: "+4.38 %"; it never rounds across the limit.</summary>
    public string Figure(double value) => $"{Number(value)} {Unit}";

    /// <summary>The same without its unit.</summary>
    public string Number(double value) =>
        NumberText.ChangeAgainstLimits(value, Lowest, Highest, Decimals);

    /// <summary>An interval of changes with its unit; neither end rounds across the limit.</summary>
    public string Interval(double lower, double upper) => $"{Ends(lower, upper)} {Unit}";

    /// <summary>What the mean change is held to, without "whichever is greater": "±7.5 %".</summary>
    public string AllowedInBrief => CriterionWords.Shortened(Allowed);

    /// <summary>
    /// The limit on the criterion's scale: "±7.5 %", "±1 of the allowance (±2 s)"; both ends where they are not alike; the
    /// protocol's own words where the data could not be put on the scale.
    /// </summary>
    private string Allowed
    {
        get
        {
            var asWritten = TradeWords.Of(Result.Limit, Names.Analyte.ShownUnit);
            return Result switch
            {
                { LowerLimit: null } or { UpperLimit: null } => asWritten,
                { Scale: ChangeScale.LogRatio } =>
                    $"{NumberText.Interval(Lowest, Highest, LogRatioDecimals)} {Unit}, that is {asWritten}",
                { Scale: ChangeScale.Share } => $"±1 {Unit} ({asWritten})",
                { Scale: ChangeScale.Absolute, Limit.AbsoluteInUnit: { } amount } =>
                    $"±{NumberText.Plain(amount)} {Names.Analyte.ShownUnit}",
                { Limit.Percent: { } percent } => $"±{NumberText.Plain(percent)} %",
                _ => asWritten,
            };
        }
    }

    private string Ends(double lower, double upper) =>
        NumberText.IntervalAgainstLimits(lower, upper, Lowest, Highest, Decimals);

    private int Decimals =>
        Result.Scale == ChangeScale.Absolute ? Names.EstimateDecimals : PercentDecimals;

    // Without a limit on the scale no figure can round across it.
    private double Lowest => Result.LowerLimit ?? double.NegativeInfinity;

    private double Highest => Result.UpperLimit ?? double.PositiveInfinity;

    private string Unit => TradeWords.Of(Result.Scale, Names.Analyte.ShownUnit);

    private static string OnScale(ChangeScale scale) =>
        scale switch
        {
            ChangeScale.Percent => " in percent of the baseline",
            ChangeScale.Absolute => " in the unit",
            ChangeScale.Share => " as a share of each specimen's allowance",
            ChangeScale.LogRatio => " of 100 ln(delayed / baseline)",
        };
}
