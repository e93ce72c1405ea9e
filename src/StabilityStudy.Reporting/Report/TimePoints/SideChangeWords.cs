using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Certainty;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>What changes of side of a decision level mean for a decision, as short as page 1 needs it.</summary>
internal static class SideChangeWords
{
    private const int MostPlaces = 2;

    /// <summary>Where more specimens changed side than imprecision alone would move: at the supported time points, and at the first that is not; the largest shares first.</summary>
    public static IEnumerable<string> OnFirstPage(StudyAnalysis analysis, SectionPages pages)
    {
        var places = (
            from sequence in analysis.Sequences
            from cell in Deciding(sequence)
            let changes = cell
                .SideChanges.Where(change => change.IsBeyondNoise)
                .OrderByDescending(Share)
                .ToImmutableArray()
            where !changes.IsEmpty
            orderby cell.Conclusion == Conclusion.Supported ? 0 : 1, Share(changes[0]) descending
            select Words(analysis, sequence, cell, changes)
        ).ToImmutableArray();
        foreach (var place in places.Take(MostPlaces))
        {
            yield return place;
        }

        if (places.Length > MostPlaces)
        {
            yield return $"{NumberText.Count(places.Length - MostPlaces)} more in {pages.Of(ConsequenceSection.Title)}.";
        }
    }

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

    private static IEnumerable<Cell> Deciding(Sequence sequence)
    {
        var supported = sequence
            .Cells.TakeWhile(cell => cell.Conclusion == Conclusion.Supported)
            .Count();
        return sequence
            .Cells.Take(supported + 1)
            .Where(cell => cell.Conclusion != Conclusion.NotAssessed);
    }

    private static double Share(SideChange change) => (double)change.Changed / change.Counted;

    /// <summary>"aPTT ufh at 6 h: 9 of 40 crossed 60 s (9 down; imprecision alone 1.1), 3 of 40 crossed 90 s (3 down; imprecision alone 0.6).".</summary>
    private static string Words(
        StudyAnalysis analysis,
        Sequence sequence,
        Cell cell,
        ImmutableArray<SideChange> changes
    )
    {
        var names = SequenceNames.Of(analysis, sequence);
        return $"{names.Code(analysis)} at {cell.Key.TimePoint}: {string.Join(", ", changes.Select(change => Words(change, names)))}{Unguarded(cell, changes)}.";
    }

    /// <summary>At a supported time point, that no criterion of the protocol holds such changes to a limit.</summary>
    private static string Unguarded(Cell cell, ImmutableArray<SideChange> changes)
    {
        var guarded = cell
            .Criteria.OfType<ReclassificationResult>()
            .SelectMany(result => result.Levels)
            .Select(level => level.Level)
            .ToImmutableHashSet();
        return
            cell.Conclusion == Conclusion.Supported
            && changes.Any(change => !guarded.Contains(change.Level))
            ? ", which no criterion limits"
            : "";
    }

    private static string Words(SideChange change, SequenceNames names)
    {
        string[] parts =
        [
            .. change.Up.IsEmpty ? [] : new[] { $"{NumberText.Count(change.Up.Length)} up" },
            .. change.Down.IsEmpty ? [] : new[] { $"{NumberText.Count(change.Down.Length)} down" },
        ];
        var noise = change.ExpectedFromNoise is { } expected
            ? $"; {NumberText.Fixed(expected, 1)} by imprecision"
            : "";
        var level = $"{NumberText.Plain(change.Level)} {names.Analyte.ShownUnit}".TrimEnd();
        return $"{NumberText.Count(change.Changed)} of {NumberText.Count(change.Counted)} crossed {level} ({string.Join(", ", parts)}{noise})";
    }
}
