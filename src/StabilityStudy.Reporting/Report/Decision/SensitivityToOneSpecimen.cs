namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What, were it otherwise, would change a conclusion, as short as page 1 needs it.</summary>
internal static class SensitivityToOneSpecimen
{
    /// <summary>With more specimens than this a conclusion does not hang on a single one; the section on what could overturn it has the numbers.</summary>
    private const int MostToHangOn = 1;

    /// <summary>
    /// What would take away the support of a supported time point is asked of all of them: the window ends at the first
    /// time point that is not supported, so the weakest of them carries all.
    /// </summary>
    public static IEnumerable<string> Supported(StudyAnalysis analysis) =>
        Sentences(
            analysis,
            times => times.Where(time => time.Conclusion == Conclusion.Supported),
            endsSequence: true
        );

    /// <summary>What would change the conclusion is asked of the first time point that is not supported.</summary>
    public static IEnumerable<string> FirstOpen(StudyAnalysis analysis) =>
        Sentences(
            analysis,
            times =>
                times
                    .SkipWhile(time => time.Conclusion == Conclusion.Supported)
                    .Take(1)
                    .Where(time => time.Conclusion != Conclusion.NotAssessed),
            endsSequence: false
        );

    private static IEnumerable<string> Sentences(
        StudyAnalysis analysis,
        Func<IEnumerable<Time>, IEnumerable<Time>> asked,
        bool endsSequence
    ) =>
        from sequence in analysis.Sequences
        let name = SequenceNames.Of(analysis, sequence).Code(analysis)
        from part in Parts(sequence)
        from line in Weakest(asked(part.Times))
        group new Place(name + part.Name, line.Time.TimePoint.ToString()) by (
            line.Line.Conclusion,
            Question: QuestionOf(line.Line.Question),
            Specimens: line.Line.Question.IsOfFurtherSpecimens ? line.Line.Question.Count : 0
        ) into changed
        orderby changed.Key.Specimens
        select changed.Key.Specimens > 0
            ? $"{changed.Key.Question} would {(endsSequence ? "end support there" : "make it " + TradeWords.Of(changed.Key.Conclusion))}: {Places(changed)}."
            : $"Would be {TradeWords.Of(changed.Key.Conclusion)} {changed.Key.Question}: {Places(changed)}.";

    /// <summary>Of the lines that count further specimens only those of the time point that needs fewest, and only where these are few; every other line.</summary>
    private static IEnumerable<(Time Time, RobustnessLine Line)> Weakest(IEnumerable<Time> times)
    {
        var changing = (
            from time in times
            from line in time.Robustness
            where line.Changes
            select (Time: time, Line: line)
        ).ToLookup(item => item.Line.Question.IsOfFurtherSpecimens);
        var fewest = changing[true].Select(item => item.Line.Question.Count).DefaultIfEmpty().Min();
        return changing[true]
            .Where(item => item.Line.Question.Count == fewest && fewest <= MostToHangOn)
            .Concat(changing[false]);
    }

    private static string QuestionOf(RobustnessQuestion question) =>
        question.IsOfFurtherSpecimens
            ? $"{TradeWords.Capital(RobustnessWords.More(question))} that had {RobustnessWords.WouldHave(question)}"
            : RobustnessWords.Of(question);

    /// <summary>"No anticoagulant at 6 h; Unfractionated heparin at 6 h, 8 h".</summary>
    private static string Places(IEnumerable<Place> places) =>
        string.Join(
            "; ",
            places
                .GroupBy(place => place.Sequence)
                .Select(group =>
                    $"{group.Key} at {string.Join(", ", group.Select(place => place.Time))}"
                )
        );

    /// <summary>The time points that carry a conclusion: those of each instrument where there are several, because each must support it.</summary>
    private static IEnumerable<(string Name, IEnumerable<Time> Times)> Parts(Sequence sequence) =>
        sequence.Parts.IsEmpty
            ?
            [
                (
                    "",
                    sequence.Cells.Select(cell => new Time(
                        cell.Key.TimePoint,
                        cell.Conclusion,
                        cell.Robustness
                    ))
                ),
            ]
            : sequence.Parts.Select(part =>
                (
                    $" on {ScopeWords.Of(part.Code)}",
                    part.TimePoints.Select(item => new Time(
                        item.TimePoint,
                        item.Conclusion,
                        item.Robustness
                    ))
                )
            );

    private sealed record Time(
        TimePoint TimePoint,
        Conclusion Conclusion,
        ImmutableArray<RobustnessLine> Robustness
    );

    private sealed record Place(string Sequence, string Time);
}
