using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What, were it otherwise, would take support away, as short as page 1 needs it.</summary>
internal static class SensitivityToOneSpecimen
{
    /// <summary>With more specimens than this a conclusion does not hang on a single one; the section on what could overturn it has the numbers.</summary>
    private const int MostToHangOn = 1;

    /// <summary>
    /// What would take away the support of a supported time point is asked of all of them: the window ends at the first
    /// time point that is not supported, so the weakest of them carries all.
    /// </summary>
    public static IEnumerable<Reservation> Of(Sequence sequence) =>
        from part in Parts(sequence)
        from line in Weakest(part.Times.Where(time => time.Conclusion == Conclusion.Supported))
        where !(sequence.Parts.IsEmpty && IsQueried(line.Line))
        group (part.Name, line.Time.TimePoint) by (
            line.Line.Conclusion,
            Question: QuestionOf(line.Line.Question),
            IsOfMean: line.Line.Question.Kind == RobustnessKind.OneSubjectLeftOut,
            IsOfSpecimens: line.Line.Question.IsOfFurtherSpecimens
                || line.Line.Question.Kind == RobustnessKind.OneSubjectLeftOut
        ) into changed
        orderby changed.Key.IsOfSpecimens ? 0 : 1
        select new Reservation(
            !changed.Key.IsOfSpecimens ? "Another way of computing decides otherwise."
                : changed.Key.IsOfMean ? "One specimen decides the mean."
                : "One specimen decides.",
            $"{TradeWords.Capital(changed.Key.Question)}, {Places(changed)} would be {TradeWords.Of(changed.Key.Conclusion)}.",
            Contradicts: true
        );

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

    /// <summary>What was left out has a query of its own at each time point.</summary>
    private static bool IsQueried(RobustnessLine line) =>
        line.Question.Kind == RobustnessKind.LeftOutCountedOutside;

    private static string QuestionOf(RobustnessQuestion question) =>
        question
            is { Kind: RobustnessKind.OneSubjectLeftOut, Changing: { } changing, Count: { } all }
            ? $"without {(changing == 1 ? "one" : $"any one of {NumberText.Count(changing)}")} of the {NumberText.Count(all)} subjects"
            : RobustnessWords.Of(question);

    /// <summary>"6 h and 8 h on AN1".</summary>
    private static string Places(IEnumerable<(string Part, TimePoint TimePoint)> places) =>
        ScopeWords.List(
            places
                .GroupBy(place => place.Part)
                .Select(part =>
                    ScopeWords.List(part.Select(place => place.TimePoint.ToString())) + part.Key
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
}
