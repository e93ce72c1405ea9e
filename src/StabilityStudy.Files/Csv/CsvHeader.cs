using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>Matches the header line with the known columns. Names are matched exactly.</summary>
internal static class CsvHeader
{
    /// <summary>The place of each known column; null when the rows cannot be read.</summary>
    public static FrozenDictionary<string, int>? Match(
        string[] header,
        int line,
        string fileName,
        CsvColumns columns,
        QueryList queries
    )
    {
        var stopsBefore = queries.StopCount;
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < header.Length; i++)
        {
            if (!places.TryAdd(header[i], i))
            {
                queries.Add(
                    CsvQueries.DuplicateColumn,
                    new QuerySource(fileName, line, header[i]),
                    header[i],
                    $"Two columns are called \"{header[i]}\"."
                );
            }
        }

        var missing = columns.Required.Where(name => !places.ContainsKey(name)).ToArray();
        var unused = header.Where(name => !columns.Names.Contains(name)).Distinct().ToArray();
        foreach (var name in missing)
        {
            queries.Add(
                CsvQueries.MissingColumn,
                new QuerySource(fileName, line, name),
                "",
                $"The column \"{name}\" is missing.{Meant(name, unused)}",
                $"Add the column \"{name}\", or correct its name in the header line."
            );
        }

        PersonalHeaders.Report(unused, line, fileName, columns.Section, queries);
        foreach (var name in unused.Where(name => !PersonalHeaders.Tells(name)))
        {
            NoteUnused(name, line, fileName, columns, places, queries);
        }

        return queries.StopCount > stopsBefore
            ? null
            : columns
                .Names.Where(places.ContainsKey)
                .ToFrozenDictionary(name => name, name => places[name]);
    }

    private static string Meant(string name, string[] unused) =>
        NearestWord.Find(name, unused) is { } nearest
            ? $" The file has a column \"{nearest}\"."
            : "";

    private static void NoteUnused(
        string name,
        int line,
        string fileName,
        CsvColumns columns,
        Dictionary<string, int> places,
        QueryList queries
    )
    {
        var source = new QuerySource(fileName, line, name);
        var absent = columns.Names.Where(column => !places.ContainsKey(column));
        if (NearestWord.Find(name, absent) is { } nearest)
        {
            queries.AddOwn(CsvQueries.ColumnMisspelt, source, name, nearest);
            return;
        }

        queries.AddOwn(CsvQueries.ColumnNotUsed, source, name);
    }
}
