using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Why a mean change is beyond its limit or leaves it open: where the mean or its interval lies, and every doubt.</summary>
internal sealed record BiasReason(BiasWords Words, Cell Cell)
{
    private const string OfMeanItself = "itself lies beyond";

    private const string MeanOnly = "mean-only-no-error-control";

    private BiasResult Bias => Words.Result;

    /// <param name="withFigures">Whether the figures stand in the sentence, or beside it in a table.</param>
    public string InWords(bool withFigures)
    {
        if (Cell.Estimates.Compared == 0)
        {
            return "no usable pair";
        }

        if (!Bias.Mean.TryGet(out var mean))
        {
            return $"no mean change: {ReasonWords.Of(Bias.Reasons[0])}";
        }

        var control = Words.IsEstimateAlone ? $" ({CriterionWords.NoErrorControl})" : "";
        return withFigures
            ? $"mean change {Words.Figure(mean.Mean)} ({NumberText.Percent(Bias.ConfidenceLevel)} interval {Words.Interval(mean.Lower, mean.Upper)}){control} {Place} {Words.AllowedInBrief}"
                + CriterionWords.Joined(Has("interval-inside") ? ", but " : ", and ", Doubts)
            : $"{PlaceInBrief(control)} {Words.AllowedInBrief}"
                + CriterionWords.Joined(", and ", DoubtsInBrief);
    }

    private bool Has(string code) => Bias.Reasons.Any(reason => reason.Code == code);

    private string Place =>
        Has("interval-inside") ? "lies inside"
        : Has("interval-outside") ? "lies wholly beyond"
        : Bias.Verdict == Verdict.NotMet ? "lies beyond"
        : Has(MeanOnly) ? "against"
        : Bias.Mean.Value is { } mean
        && (mean.Mean <= Bias.LowerLimit || mean.Mean >= Bias.UpperLimit)
            ? OfMeanItself
        : "reaches beyond";

    /// <summary>Says whether the mean or its interval lies there: "the interval of the mean change reaches beyond".</summary>
    private string PlaceInBrief(string control) =>
        Place == OfMeanItself ? $"the mean change{control} {OfMeanItself}"
        : Bias.Reasons.Any(IsOfInterval) ? $"the interval of the mean change{control} {Place}"
        : $"the mean change{control} {Place}";

    private static bool IsOfInterval(VerdictReason reason) =>
        reason.Code.StartsWith("interval-", StringComparison.Ordinal);

    private IEnumerable<string> Doubts => DoubtsBut(_ => false);

    /// <summary>The skewness itself stands on the page of the time point.</summary>
    private IEnumerable<string> DoubtsInBrief =>
        Has("skewed")
            ? DoubtsBut(reason => reason.Code == "skewed")
                .Prepend("its changes are skewed toward that limit")
            : Doubts;

    private IEnumerable<string> DoubtsBut(Func<VerdictReason, bool> isSaid) =>
        Bias
            .Reasons.Where(reason =>
                !IsOfInterval(reason) && reason.Code != MeanOnly && !isSaid(reason)
            )
            .Select(reason =>
                reason.Code == "too-few-days"
                    ? $"only {NumberText.Count(Cell.Estimates.CollectionDays)} collection {(Cell.Estimates.CollectionDays == 1 ? "day" : "days")}, at least {NumberText.Count(Words.Protocol.MinimumDays)} required"
                    : ReasonWords.Of(reason)
            );
}
