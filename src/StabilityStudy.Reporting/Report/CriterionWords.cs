using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Report;

/// <summary>The figures of a criterion as the report prints them.</summary>
internal static class CriterionWords
{
    private const int PercentDecimals = 2;

    /// <summary>Decimals of figures on the criterion's scale.</summary>
    public static int Decimals(ChangeScale scale, SequenceNames names) =>
        scale == ChangeScale.Absolute ? names.EstimateDecimals : PercentDecimals;

    /// <summary>A change with its unit: "+4.38 %".</summary>
    public static string Figure(BiasResult bias, double value, SequenceNames names) =>
        $"{NumberText.Change(value, Decimals(bias.Scale, names))} {TradeWords.Of(bias.Scale, names.Analyte.Unit)}";

    /// <summary>The upper limit without sign: "7.5 %".</summary>
    public static string LimitFigure(BiasResult bias, SequenceNames names) =>
        bias.UpperLimit is { } limit
            ? $"{NumberText.Plain((decimal)Math.Round(limit, 4))} {TradeWords.Of(bias.Scale, names.Analyte.Unit)}"
            : "none on this scale";

    /// <summary>Mean with its interval: "+4.38 (+3.20 to +5.61) %"; says so when there is none.</summary>
    public static string MeanWithInterval(BiasResult bias, SequenceNames names)
    {
        var decimals = Decimals(bias.Scale, names);
        return bias.Mean.TryGet(out var mean)
            ? $"{NumberText.Change(mean.Mean, decimals)} ({NumberText.Interval(mean.Lower, mean.Upper, decimals)}) {TradeWords.Of(bias.Scale, names.Analyte.Unit)}"
            : "not computable";
    }

    /// <summary>Share with its lower bound: "38 of 39 (88.4 %)"; the reason when there is none.</summary>
    public static string ShareWithLowerBound(IndividualResult individual) =>
        individual.Bounds.TryGet(out var bounds)
            ? $"{individual.Agreement.Inside} of {individual.Agreement.Counted} ({LowerBound(bounds)})"
            : "none counted";

    /// <summary>The exact one-sided lower bound: "88.4 %".</summary>
    public static string LowerBound(ProportionBounds bounds) =>
        NumberText.Fixed(100 * bounds.OneSidedLower, 1) + " %";

    /// <summary>What the criterion asks, in one sentence.</summary>
    public static string Asks(CriterionResult result, SequenceNames names) =>
        result switch
        {
            BiasResult bias =>
                $"The {NumberText.Percent(bias.ConfidenceLevel)} interval of the mean change lies strictly inside ±{LimitFigure(bias, names)}.",
            IndividualResult individual =>
                $"At least {NumberText.Percent(individual.RequiredShare)} of specimens within {TradeWords.Of(individual.Limit, names.Analyte.Unit)}, by the exact one-sided {NumberText.Percent(individual.ConfidenceLevel)} lower bound.",
            _ => "",
        };
}
