using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Looks for the header of a table on other lines than the stated one, so that a query can say where it is.</summary>
internal sealed class HeaderSearch(CsvColumns columns, FileLayout layout, KnownCodes known)
{
    /// <summary>How many lines are looked at.</summary>
    public const int MostLines = 60;

    private const int FewestNames = 3;
    private const int MostNamed = 6;

    private readonly ImmutableArray<string> _wanted =
    [
        .. layout
            .Columns.Values.Concat(layout.Parts.SelectMany(part => part.Columns.Values))
            .SelectMany(headers => headers)
            .Concat(columns.Names.Where(name => !layout.Columns.ContainsKey(name)))
            .Distinct(),
    ];

    /// <summary>" Line 6 has these columns …" with a leading space; empty where no other line has more of them.</summary>
    public string Elsewhere(ImmutableArray<TableLine> lines, TableForm form)
    {
        var stated = form.HeaderLine ?? 1;
        var best = lines
            .Where(line => line.Number != stated)
            .Select(line => (Line: line, Count: CountOf(line)))
            .OrderByDescending(item => item.Count)
            .FirstOrDefault();
        return
            best.Line is not null
            && best.Count >= FewestNames
            && best.Count
                > lines.Where(line => line.Number == stated).Select(CountOf).FirstOrDefault()
            ? FormattableString.Invariant(
                $" Line {best.Line.Number} has {best.Count} of the names: write header_line = {best.Line.Number} under [read.{columns.Section}]."
            )
            : "";
    }

    /// <summary>" The columns … look like one row a specimen …"; empty where they do not.</summary>
    public string Wide(IEnumerable<string> header)
    {
        var analytes = known.AnalyteById.Keys.ToArray();
        var times = known
            .OccasionByWord.Keys.Where(word => known.OccasionByWord[word].TimePoint is not null)
            .Select(Compact)
            .Append("0h")
            .ToArray();
        var found = header
            .Where(name =>
                times.Any(time => Compact(name).Contains(time, StringComparison.OrdinalIgnoreCase))
                || analytes.Any(id =>
                    string.Equals(Compact(name), Compact(id), StringComparison.OrdinalIgnoreCase)
                )
            )
            .Select(UnseenCharacters.Shown)
            .Take(MostNamed)
            .ToArray();
        return found.Length > 1
            ? $" The columns {string.Join(", ", found.Select(name => $"\"{name}\""))} look like several results a row: describe each under [[read.{columns.Section}.wide]]."
            : "";
    }

    /// <summary>Whether the header also stands before the stated line, so that rows between would be left out unseen; a query then.</summary>
    public static bool FindsEarlier(
        ImmutableArray<TableLine> lines,
        TableForm form,
        string fileName,
        QueryList queries
    )
    {
        if (
            form.HeaderLine is not { } stated
            || lines.FirstOrDefault(line => line.Number == stated) is not { } header
            || lines.FirstOrDefault(line =>
                line.Number < stated && !line.IsEmpty && IsSame(line, header)
            )
                is not { } earlier
        )
        {
            return false;
        }

        queries.Add(
            CsvQueries.HeaderStandsEarlier,
            new QuerySource(fileName, earlier.Number, null),
            "",
            FormattableString.Invariant(
                $"The header of line {stated} also stands on line {earlier.Number}, so that the rows between them would not be read."
            ),
            FormattableString.Invariant(
                $"Write header_line = {earlier.Number}; a header that stands again further down is left out by itself."
            )
        );
        return true;
    }

    /// <summary>Whether two lines have the same texts.</summary>
    public static bool IsSame(TableLine first, TableLine second)
    {
        var most = Math.Max(first.Cells.Length, second.Cells.Length);
        for (var i = 0; i < most; i++)
        {
            if (
                !string.Equals(
                    first.TextAt(i).Trim(),
                    second.TextAt(i).Trim(),
                    StringComparison.Ordinal
                )
            )
            {
                return false;
            }
        }

        return true;
    }

    private int CountOf(TableLine line) =>
        line.Cells.Select(cell => cell.Text.Trim()).Distinct().Count(_wanted.Contains);

    private static string Compact(string text) => text.Replace(" ", "", StringComparison.Ordinal);
}
