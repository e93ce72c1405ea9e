using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>The conclusion of one sequence in a word and a sentence.</summary>
internal static class ConclusionSentence
{
    /// <summary>The conclusion of a sequence.</summary>
    /// <param name="analysis">The analysis.</param>
    /// <param name="sequence">The sequence.</param>
    /// <param name="withFigures">Whether the deciding figures stand in the sentence, or beside it in a table.</param>
    public static VerdictLine Of(StudyAnalysis analysis, Sequence sequence, bool withFigures)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var open = sequence.Cells.FirstOrDefault(cell => cell.Conclusion != Conclusion.Supported);
        if (sequence.Window is { } window)
        {
            var time = DurationText.FormatWindow(window.Time);
            var only = window.Time < Standard(names) ? " only" : "";
            return new VerdictLine(
                VerdictShape.Supported,
                $"Supported to {time}{only}{OriginWords.InHeadline(analysis.Protocol, names.Storage)}",
                $"{Who(analysis, names)} · {Standing(window, names)}{ScopeWords.InHeadline(sequence)}",
                $"By this study's evidence, testing {Scope(names)} is supported up to {time} after {OriginWords.Start(analysis.Protocol.TimeOrigin)}; {Beside(window, names)}. {OriginWords.Sentence(analysis.Protocol, names.Storage)}{After(open, names, analysis.Protocol, withFigures)}{ScopeWords.Sentence(analysis, sequence)}"
            );
        }

        return open is null
            ? new VerdictLine(
                VerdictShape.NotAssessed,
                "Not assessed",
                Who(analysis, names),
                sequence.Cells.IsEmpty
                    ? $"For {Scope(names)} the study has no time point to conclude on."
                    : $"For {Scope(names)} the delays of the pairs leave no window."
            )
            : new VerdictLine(
                TradeWords.ShapeOf(open.Conclusion),
                TradeWords.Capital(TradeWords.Of(open.Conclusion)),
                Who(analysis, names) + ScopeWords.InHeadline(sequence),
                $"By this study's evidence, {NoWindow.InWords(sequence, names)} for {Scope(names)}.{After(open, names, analysis.Protocol, withFigures)}{ScopeWords.Sentence(analysis, sequence)} {OfToday(sequence, names)}"
            );
    }

    /// <summary>The same below a title that names the sequence, beside the figures: what the title and the figures show is not said again.</summary>
    public static VerdictLine UnderTitle(StudyAnalysis analysis, Sequence sequence)
    {
        var line = Of(analysis, sequence, withFigures: false);
        var names = SequenceNames.Of(analysis, sequence);
        var open = sequence.Cells.FirstOrDefault(cell => cell.Conclusion != Conclusion.Supported);
        return line with
        {
            Subject = "",
            Sentence = sequence.Window is { } window
                ? $"{TradeWords.Capital(Beside(window, names))}; {Standing(window, names)}.{After(open, names, analysis.Protocol, withFigures: false)}{ScopeWords.Sentence(analysis, sequence)}"
                : line.Sentence,
        };
    }

    /// <summary>The patient group, with its analyte where the study has several.</summary>
    private static string Who(StudyAnalysis analysis, SequenceNames names) => names.Short(analysis);

    private static string Scope(SequenceNames names) =>
        $"{names.Analyte.Id} ({TradeWords.Of(names.Storage)}; {names.Group.Name})";

    private static string Beside(SupportedWindow window, SequenceNames names)
    {
        var standard = Standard(names);
        var today = DurationText.Format(standard);
        return window.Time > standard ? $"today's window is {today}"
            : window.Time == standard ? $"this is today's window of {today}, not longer"
            : $"this is shorter than today's window of {today}, which this study does not confirm";
    }

    private static TimeSpan Standard(SequenceNames names) =>
        names.Analyte.StandardWindowOf(names.Group.Id, names.Storage.Id).Time;

    private static string Standing(SupportedWindow window, SequenceNames names) =>
        (window.ManufacturerLimit, names.Analyte.ManufacturerLimit) switch
        {
            (ManufacturerStanding.Silent, _) or (_, null) => "manufacturer's limit not stated",
            (ManufacturerStanding.Inside, { } limit) =>
                $"within the manufacturer's limit of {DurationText.Format(limit.Time)}",
            (_, { } limit) =>
                $"modified test: beyond the manufacturer's limit of {DurationText.Format(limit.Time)}",
        };

    /// <summary>Today's window is confirmed only where this study tested it and supports it.</summary>
    private static string OfToday(Sequence sequence, SequenceNames names)
    {
        var standard = Standard(names);
        var time = DurationText.Format(standard);
        return
            sequence.Cells.FirstOrDefault(cell => cell.Key.TimePoint.Delay == standard)
                is { } tested
            ? $"Today's window of {time} was tested: {TradeWords.Of(tested.Conclusion)}."
            : $"Today's {time} was not tested and is not confirmed.";
    }

    private static string After(
        Cell? open,
        SequenceNames names,
        StudyProtocol protocol,
        bool withFigures
    )
    {
        if (open is null)
        {
            return "";
        }

        var reason = DecidingReason.Of(open, names, protocol, withFigures);
        var because = reason.Length == 0 ? "." : $": {reason}.";
        return open.Conclusion switch
        {
            Conclusion.NotAssessed when open.Criteria.IsEmpty =>
                $" At {open.Key.TimePoint} no criterion applies.",
            Conclusion.NotAssessed =>
                $" At {open.Key.TimePoint} the data cannot be assessed{because}",
            Conclusion.NotSupported =>
                $" At {open.Key.TimePoint} the data speak against it{because}",
            Conclusion.Inconclusive or Conclusion.Supported or Conclusion.NotReached =>
                $" At {open.Key.TimePoint} the data do not decide{because}",
        };
    }
}
