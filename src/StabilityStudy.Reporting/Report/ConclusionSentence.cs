using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>The conclusion of one sequence in a word and a sentence.</summary>
internal static class ConclusionSentence
{
    public static VerdictLine Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var standard = DurationText.Format(names.Analyte.StandardWindow.Time);
        var what = SharedSubject.Of(analysis) is null ? $"{names.What}: the" : "The";
        var open = sequence.Cells.FirstOrDefault(cell => cell.Conclusion != Conclusion.Supported);
        if (sequence.Window is { } window)
        {
            var time = DurationText.Format(window.Time);
            return new VerdictLine(
                VerdictShape.Supported,
                "Supported to " + time,
                names.Group.Name,
                $"{what} data support testing up to {time} after collection; today's window is {standard}."
                    + (open is null ? "" : " " + AtTimePoint(open, names))
            );
        }

        return open is null
            ? new VerdictLine(
                VerdictShape.NotAssessed,
                "Not assessed",
                names.Group.Name,
                $"{what} study has no time point to conclude on."
            )
            : new VerdictLine(
                TradeWords.ShapeOf(open.Conclusion),
                TradeWords.Capital(TradeWords.Of(open.Conclusion)),
                names.Group.Name,
                $"{what} data support no window beyond today's {standard}. {AtTimePoint(open, names)}"
            );
    }

    private static string AtTimePoint(Cell cell, SequenceNames names) =>
        cell.Conclusion switch
        {
            Conclusion.NotAssessed => $"At {cell.Key.TimePoint} no criterion applies.",
            Conclusion.NotSupported =>
                $"At {cell.Key.TimePoint} the data speak against it: {Figures(cell, names, Verdict.NotMet)}.",
            _ =>
                $"At {cell.Key.TimePoint} the data do not decide: {Figures(cell, names, Verdict.Inconclusive)}.",
        };

    private static string Figures(Cell cell, SequenceNames names, Verdict deciding) =>
        string.Join(
            "; ",
            cell.Criteria.Where(result => result.Verdict == deciding)
                .Select(result => Figure(result, names))
        );

    private static string Figure(CriterionResult result, SequenceNames names) =>
        result switch
        {
            BiasResult bias when bias.Mean.TryGet(out var mean) =>
                $"mean change {CriterionWords.Figure(bias, mean.Mean, names)} (allowed {CriterionWords.Allowed(bias, names)})",
            IndividualResult { Agreement.Counted: > 0 } individual =>
                $"{NumberText.Count(individual.Agreement.Inside)} of {NumberText.Count(individual.Agreement.Counted)} specimens within the allowable difference",
            _ => TradeWords.Clause(result.Reasons[0].Text),
        };
}
