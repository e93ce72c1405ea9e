using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Reporting.Report;

/// <summary>Why a time point is concluded on as it is: the deciding figures with their intervals, and every doubt in words.</summary>
internal static class DecidingReason
{
    private const string OfMeanItself = "itself lies beyond";

    private const string MeanOnly = "mean-only-no-error-control";

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
            cell.Doubts.Select(doubt => TradeWords.Clause(doubt.Text))
                .Concat(
                    cell.Criteria.Where(result => result.Verdict == deciding)
                        .Select(result =>
                            withFigures
                                ? OfCriterion(result, cell, names, protocol)
                                : InBrief(result, cell, names, protocol)
                        )
                )
        );
    }

    private static string OfCriterion(
        CriterionResult result,
        Cell cell,
        SequenceNames names,
        StudyProtocol protocol
    )
    {
        var control = CriterionFigures.IsPointOnly(result, protocol)
            ? $" ({CriterionFigures.NoErrorControl})"
            : "";
        return result switch
        {
            BiasResult or IndividualResult when HasNoPair(result, cell) => "no usable pair",
            BiasResult bias when bias.Mean.TryGet(out var mean) =>
                $"mean change {CriterionWords.Figure(bias, mean.Mean, names)} ({NumberText.Percent(bias.ConfidenceLevel)} interval {CriterionWords.Interval(bias, mean.Lower, mean.Upper, names)}){control} {Place(bias)} {CriterionFigures.Allowed(bias, names)}"
                    + Joined(
                        bias.Reasons.Any(reason => reason.Code == "interval-inside")
                            ? ", but "
                            : ", and ",
                        Doubts(bias, cell, protocol)
                    ),
            IndividualResult { Bounds.Value: not null } individual => Share(
                individual,
                names,
                control
            ),
            BiasResult => $"no mean change: {TradeWords.Clause(result.Reasons[0].Text)}",
            _ => Others(result, names, protocol),
        };
    }

    private static string InBrief(
        CriterionResult result,
        Cell cell,
        SequenceNames names,
        StudyProtocol protocol
    )
    {
        var control = CriterionFigures.IsPointOnly(result, protocol)
            ? $" ({CriterionFigures.NoErrorControl})"
            : "";
        return result switch
        {
            BiasResult or IndividualResult when HasNoPair(result, cell) => "no usable pair",
            BiasResult { Mean.Value: not null } bias =>
                $"{PlaceInBrief(bias, control)} {CriterionFigures.Allowed(bias, names)}"
                    + Joined(", and ", DoubtsInBrief(bias, cell, protocol)),
            IndividualResult { Bounds.Value: not null, Verdict: Verdict.NotMet } individual =>
                $"too many specimens{control} change by more than the limit",
            IndividualResult { Bounds.Value: { } bounds } individual
                when bounds.OneSidedLower < individual.RequiredShare =>
                $"{NumberText.Count(individual.Agreement.Inside)} of {NumberText.Count(individual.Agreement.Counted)} within the limit{control} do not show the required {NumberText.Percent(individual.RequiredShare)}",
            BiasResult => $"no mean change: {TradeWords.Clause(result.Reasons[0].Text)}",
            _ => TradeWords.Clause(result.Reasons[0].Text),
        };
    }

    private static bool HasNoPair(CriterionResult result, Cell cell) =>
        result is IndividualResult individual
            ? individual.Agreement.Counted == 0
            : cell.Estimates.Compared == 0;

    private static string Place(BiasResult bias) =>
        bias.Reasons.Any(reason => reason.Code == "interval-inside") ? "lies inside"
        : bias.Reasons.Any(reason => reason.Code == "interval-outside") ? "lies wholly beyond"
        : bias.Verdict == Verdict.NotMet ? "lies beyond"
        : bias.Reasons.Any(reason => reason.Code == MeanOnly) ? "against"
        : bias.Mean.Value is { } mean
        && (mean.Mean <= bias.LowerLimit || mean.Mean >= bias.UpperLimit)
            ? OfMeanItself
        : "reaches beyond";

    /// <summary>Says whether the mean or its interval lies there: "the interval of the mean change reaches beyond".</summary>
    private static string PlaceInBrief(BiasResult bias, string control) =>
        Place(bias) switch
        {
            OfMeanItself => $"the mean change{control} {OfMeanItself}",
            var place when bias.Reasons.Any(reason => IsOfInterval(reason.Code)) =>
                $"the interval of the mean change{control} {place}",
            var place => $"the mean change{control} {place}",
        };

    private static bool IsOfInterval(string code) =>
        code.StartsWith("interval-", StringComparison.Ordinal);

    private static IEnumerable<string> Doubts(BiasResult bias, Cell cell, StudyProtocol protocol) =>
        bias
            .Reasons.Where(reason => !IsOfInterval(reason.Code) && reason.Code != MeanOnly)
            .Select(reason =>
                reason.Code == "too-few-days"
                    ? $"only {NumberText.Count(cell.Estimates.CollectionDays)} collection {(cell.Estimates.CollectionDays == 1 ? "day" : "days")}, at least {NumberText.Count(protocol.MinimumDays)} required"
                    : TradeWords.Clause(reason.Text)
            );

    /// <summary>The skewness itself stands on the page of the time point.</summary>
    private static IEnumerable<string> DoubtsInBrief(
        BiasResult bias,
        Cell cell,
        StudyProtocol protocol
    ) =>
        bias.Reasons.Any(reason => reason.Code == "skewed")
            ? Doubts(
                    bias with
                    {
                        Reasons = bias.Reasons.RemoveAll(item => item.Code == "skewed"),
                    },
                    cell,
                    protocol
                )
                .Prepend("its changes are skewed toward that limit")
            : Doubts(bias, cell, protocol);

    private static string Share(IndividualResult individual, SequenceNames names, string control)
    {
        var bounds = individual.Bounds.Value!;
        var required = NumberText.Percent(individual.RequiredShare);
        var start =
            $"{NumberText.Count(individual.Agreement.Inside)} of {NumberText.Count(individual.Agreement.Counted)} specimens within {CriterionFigures.Limit(individual.Limit, names)}{control}: ";
        var undecidable =
            individual.Agreement.Undecidable > 0
                ? $" ({NumberText.Count(individual.Agreement.Undecidable)} of them undecidable, counted as outside)"
                : "";
        if (individual.Verdict == Verdict.NotMet && bounds.OneSidedUpper < individual.RequiredShare)
        {
            return $"{start}upper bound {CriterionWords.UpperBound(bounds, individual.RequiredShare)}, below the required {required}{undecidable}";
        }

        return bounds.OneSidedLower < individual.RequiredShare
            ? $"{start}lower bound {CriterionWords.LowerBound(bounds, individual.RequiredShare)}, below the required {required}{undecidable}"
            : $"{start}lower bound {CriterionWords.LowerBound(bounds, individual.RequiredShare)}, but {TradeWords.Clause(individual.Reasons[0].Text)}";
    }

    private static string Others(
        CriterionResult result,
        SequenceNames names,
        StudyProtocol protocol
    )
    {
        var shape = TradeWords.ShapeOf(result.Verdict);
        var figures = CriterionFigures
            .Of(result, names, protocol, withLimits: true)
            .Where(figure => figure.Shape == shape)
            .Select(figure => $"{figure.Found} against {figure.Required}")
            .ToImmutableArray();
        return TradeWords.Clause(result.Reasons[0].Text) + Joined(": ", figures);
    }

    private static string Joined(string before, IEnumerable<string> texts)
    {
        var joined = string.Join("; ", texts);
        return joined.Length == 0 ? "" : before + joined;
    }
}
