using StabilityStudy.Core.Criteria.Bias;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Why a mean change is beyond its limit or leaves it open: where the mean or its interval lies, and every doubt.</summary>
internal sealed record BiasReason(BiasWords Words, Cell Cell)
{
    private const string OfMeanItself = "itself lies beyond";

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
                + CriterionWords.Joined(IsAt(IntervalPlace.Inside) ? ", but " : ", and ", Doubts)
            : $"{PlaceInBrief(control)} {Words.AllowedInBrief}"
                + CriterionWords.Joined(", and ", Doubts);
    }

    private bool Has<T>()
        where T : VerdictReason => Bias.Reasons.OfType<T>().Any();

    private bool IsAt(IntervalPlace place) =>
        Bias.Reasons.OfType<IntervalReason>().Any(reason => reason.Place == place);

    private string Place =>
        IsAt(IntervalPlace.Inside) ? "lies inside"
        : IsAt(IntervalPlace.Outside) ? "lies wholly beyond"
        : Bias.Verdict == Verdict.NotMet ? "lies beyond"
        : Has<MeanAloneReason>() ? "against"
        : Bias.Mean.Value is { } mean
        && (mean.Mean <= Bias.LowerLimit || mean.Mean >= Bias.UpperLimit)
            ? OfMeanItself
        : "reaches beyond";

    /// <summary>Says whether the mean or its interval lies there: "the interval of the mean change reaches beyond".</summary>
    private string PlaceInBrief(string control) =>
        Place == OfMeanItself
            ? $"the interval of the mean change{control} reaches back inside, the mean itself lies beyond"
        : Has<IntervalReason>() ? $"the interval of the mean change{control} {Place}"
        : $"the mean change{control} {Place}";

    private IEnumerable<string> Doubts =>
        Bias
            .Reasons.Where(reason => reason is not (IntervalReason or MeanAloneReason))
            .Select(reason =>
                reason is TooFewDaysReason few
                    ? $"only {NumberText.Count(few.Days)} collection {(few.Days == 1 ? "day" : "days")}, at least {NumberText.Count(few.Required)} required"
                    : ReasonWords.Of(reason)
            );
}
