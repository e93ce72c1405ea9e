using StabilityStudy.Core.Looks;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Earlier looks at the data, and how far collection is, in the words of page 1.</summary>
internal static class LookWords
{
    /// <summary>Every earlier look in a sentence; null without one.</summary>
    public static string? Of(ImmutableArray<EarlierLook> looks) =>
        looks.IsEmpty
            ? null
            : $"The data were looked at on {string.Join("; on ", looks.Select(Of))} (times by the clock of the computer that was used). Since then they are other data.";

    /// <summary>What is still to come: "30 of 40 specimens"; null when collection is complete or has ended.</summary>
    public static string? ToCome(StudyAnalysis analysis)
    {
        string[] parts =
        [
            .. analysis
                .Sequences.Where(sequence =>
                    sequence.Collection.State == CollectionState.Incomplete
                )
                .Select(sequence =>
                    $"{SequenceNames.Of(analysis, sequence).Title(analysis)} {NumberText.Count(sequence.Collection.Usable)} of {NumberText.Count(sequence.Collection.Planned)}"
                ),
        ];
        return parts.Length == 0 ? null : string.Join("; ", parts);
    }

    private static string Of(EarlierLook look)
    {
        var day = look.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return look.Cells.IsEmpty
            ? day
            : $"{day} with {Range(look.Cells.Select(cell => cell.Counted))} of {Range(look.Cells.Select(cell => cell.Planned))} pairs";
    }

    private static string Range(IEnumerable<int> numbers)
    {
        var all = numbers.ToImmutableArray();
        return all.Min() == all.Max()
            ? NumberText.Count(all[0])
            : $"{NumberText.Count(all.Min())} to {NumberText.Count(all.Max())}";
    }
}
