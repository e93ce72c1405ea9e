using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds columns that tell who people are. They are not read, and nothing of what stands in them is shown.</summary>
internal static class PersonalColumns
{
    private const double Many = 0.3;
    private const int YearsBefore = 3;

    /// <summary>Says of each of them that it is not read.</summary>
    public static void Say(SectionDraft draft, Surroundings study)
    {
        foreach (var column in draft.Profiles)
        {
            if (draft.MeaningOf(column) is null && PersonalHeaders.Of(column.Header) is { } known)
            {
                draft.Say(column, "not read", HowSure.Sure, known);
            }
            else if (OfContent(draft, column, study) is { } shape)
            {
                draft.Say(column, "not read", HowSure.Likely, $"looks like {shape}s");
            }
        }
    }

    private static string? OfContent(SectionDraft draft, ColumnProfile column, Surroundings study)
    {
        if (column.Filled.IsEmpty)
        {
            return null;
        }

        if (column.IsTimes)
        {
            return draft.EventOf(column) is null && IsLongAgo(column, study) ? "birth date" : null;
        }

        // A column of codes is asked about where it is read; here are those that nothing would read.
        if (draft.MeaningOf(column) is not null)
        {
            return null;
        }

        var shapes = column
            .Filled.Select(cell => IdentityShape.Of(cell.Text.Trim()))
            .OfType<string>()
            .ToArray();
        return shapes.Length >= Many * column.Filled.Length
            ? shapes.GroupBy(shape => shape).MaxBy(group => group.Count())!.Key
            : null;
    }

    private static bool IsLongAgo(ColumnProfile column, Surroundings study) =>
        column
            .Filled.Select(cell => YearOf(cell.Text))
            .OfType<int>()
            .Count(year => year < study.AsOf.Year - YearsBefore) * 2
        > column.Filled.Length;

    private static int? YearOf(string text)
    {
        foreach (var word in PlainWords.Of(text))
        {
            if (
                word.Length == 4
                && int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var year)
                && year is >= 1900 and <= 2100
            )
            {
                return year;
            }
        }

        return null;
    }
}
