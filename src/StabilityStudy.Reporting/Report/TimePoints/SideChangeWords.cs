using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Estimates;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>What changes of side of a decision level mean for a decision, as short as page 1 needs it.</summary>
internal static class SideChangeWords
{
    /// <summary>That more specimens changed the side of a level than imprecision alone would move.</summary>
    /// <param name="cell">The time point.</param>
    /// <param name="change">The changes of side.</param>
    /// <param name="told">Those of the same level in earlier reservations, which told their harm already.</param>
    /// <param name="names">Names of the row.</param>
    public static Reservation Reservation(
        Cell cell,
        SideChange change,
        ImmutableArray<SideChange> told,
        SequenceNames names
    )
    {
        var level = $"{NumberText.Plain(change.Level)} {names.Analyte.ShownUnit}".TrimEnd();
        var all = NumberText.Count(change.Counted);
        string[] moved =
        [
            .. Moved(change.Down.Length, $"of {all} fell below it"),
            .. Moved(
                change.Up.Length,
                change.Down.IsEmpty ? $"of {all} rose above it" : "rose above it"
            ),
        ];
        var side =
            change.Down.Length == change.Up.Length ? "across"
            : change.Down.Length > change.Up.Length ? "below"
            : "above";
        var noise = change.ExpectedFromNoise is { } expected
            ? $" (imprecision alone: {NumberText.Fixed(expected, 1)})"
            : "";
        var harm = LevelMeaningWords.Harm(
            names.Analyte.MeaningOf(change.Level, names.Group.Id),
            below: !change.Down.IsEmpty && told.All(earlier => earlier.Down.IsEmpty),
            above: !change.Up.IsEmpty && told.All(earlier => earlier.Up.IsEmpty)
        );
        return new(
            $"Waiting moved results {side} {level}.",
            $"At {cell.Key.TimePoint}{(cell.Conclusion == Conclusion.Supported ? "" : $" ({TradeWords.Of(cell.Conclusion)})")}, {string.Join(" and ", moved)}{noise}{Unguarded(cell, change)}.{harm}",
            cell.Conclusion == Conclusion.Supported
        );
    }

    private static string[] Moved(int count, string how) =>
        count == 0 ? [] : [$"{NumberText.Count(count)} {how}"];

    /// <summary>Decision levels with too few baselines on a side at every time point: "90 s"; null without any.</summary>
    public static string? NotTested(Sequence sequence, SequenceNames names)
    {
        string[] levels =
        [
            .. names
                .Analyte.DecisionLevels.Where(level =>
                    sequence.Cells.All(cell =>
                        cell.SideChanges.All(change => change.Level != level || !change.IsCovered)
                    )
                )
                .Select(NumberText.Plain),
        ];
        return levels.Length == 0
            ? null
            : $"{string.Join(", ", levels)} {names.Analyte.ShownUnit}".TrimEnd();
    }

    /// <summary>At a supported time point, that no criterion of the protocol holds such changes to a limit.</summary>
    private static string Unguarded(Cell cell, SideChange change) =>
        cell.Conclusion == Conclusion.Supported
        && cell.Criteria.OfType<ReclassificationResult>()
            .SelectMany(result => result.Levels)
            .All(level => level.Level != change.Level)
            ? "; no criterion limits this"
            : "";
}
