using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using Cell = StabilityStudy.Core.Analysis.Cell;

namespace StabilityStudy.Reporting.Report;

/// <summary>The conclusion of one sequence in a word and a sentence.</summary>
internal static class ConclusionSentence
{
    public static VerdictLine Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var standard = DurationText.Format(names.Analyte.StandardWindow.Time);
        var what = $"{names.Analyte.Name} in {TradeWords.Of(names.Storage)}";
        var open = sequence.Cells.FirstOrDefault(cell => cell.Conclusion != Conclusion.Supported);
        if (sequence.Window is { } window)
        {
            var time = DurationText.Format(window.Time);
            return new VerdictLine(
                VerdictShape.Supported,
                "Supported to " + time,
                names.Group.Name,
                $"{what}: the data support testing up to {time} after collection (today's window: {standard})."
                    + (open is null ? "" : " " + AtTimePoint(open, names))
            );
        }

        return open is null
            ? new VerdictLine(
                VerdictShape.NotAssessed,
                "Not assessed",
                names.Group.Name,
                $"{what}: the study has no time point to conclude on."
            )
            : new VerdictLine(
                TradeWords.ShapeOf(open.Conclusion),
                Capital(TradeWords.Of(open.Conclusion)),
                names.Group.Name,
                $"{what}: nothing here supports a window beyond today's {standard}. {AtTimePoint(open, names)}"
            );
    }

    private static string AtTimePoint(Cell cell, SequenceNames names) =>
        cell.Conclusion == Conclusion.NotAssessed
            ? $"At {cell.Key.TimePoint} no criterion applies."
            : $"At {cell.Key.TimePoint} {Deciding(cell, names)}.";

    private static string Deciding(Cell cell, SequenceNames names)
    {
        var wanted =
            cell.Conclusion == Conclusion.NotSupported
                ? Core.Conclusions.Verdict.NotMet
                : Core.Conclusions.Verdict.Inconclusive;
        var decisive = cell
            .Criteria.Where(result => result.Verdict == wanted)
            .Select(result => InWords(result, names));
        return string.Join(", and ", decisive);
    }

    private static string InWords(CriterionResult result, SequenceNames names) =>
        result switch
        {
            BiasResult bias when bias.Mean.TryGet(out var mean) =>
                $"the mean change is {CriterionWords.Figure(bias, mean.Mean, names)} against an allowable ±{CriterionWords.LimitFigure(bias, names)} ({bias.Reasons[0].Text})",
            IndividualResult individual =>
                $"{individual.Agreement.Inside} of {individual.Agreement.Counted} specimens stay within the allowable difference ({individual.Reasons[0].Text})",
            _ => result.Reasons[0].Text,
        };

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
