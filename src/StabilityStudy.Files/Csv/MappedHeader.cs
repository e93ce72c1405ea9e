using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>Matches a facility's header line with the columns as study.toml names them. Other columns are not used.</summary>
internal static class MappedHeader
{
    /// <summary>The place of each known column; null when the rows cannot be read.</summary>
    public static FrozenDictionary<string, int>? Match(
        string[] header,
        int line,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        QueryList queries
    )
    {
        var stopsBefore = queries.StopCount;
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var column in columns.Names)
        {
            var name = layout.HeaderOf(column);
            var isConstant = layout.Constants.ContainsKey(column);
            var place = Array.IndexOf(header, name);
            if (place < 0)
            {
                if (!isConstant && IsNeeded(column, columns, layout))
                {
                    ReportMissing(column, name);
                }

                continue;
            }

            places.Add(column, place);
            if (isConstant || Array.LastIndexOf(header, name) > place)
            {
                queries.Add(
                    CsvQueries.DuplicateColumn,
                    new QuerySource(fileName, line, column),
                    name,
                    isConstant
                        ? $"The file has a column \"{name}\", and study.toml gives one value for every row."
                        : $"Two columns are called \"{name}\".",
                    isConstant
                        ? "Remove the constant, or rename the column."
                        : "Rename or remove one of them."
                );
            }
        }

        foreach (var column in columns.Names)
        {
            if (!places.ContainsValue(Array.IndexOf(header, column)) && header.Contains(column))
            {
                queries.AddOwn(
                    CsvQueries.OwnColumnLeftAside,
                    new QuerySource(fileName, line, column),
                    column,
                    layout.HeaderOf(column)
                );
            }
        }

        return queries.StopCount > stopsBefore
            ? null
            : places.ToFrozenDictionary(StringComparer.Ordinal);

        void ReportMissing(string column, string name) =>
            queries.Add(
                CsvQueries.MissingColumn,
                new QuerySource(fileName, line, column),
                "",
                $"The column \"{name}\", read as \"{column}\", is missing.{NearestWord.Question(name, header)}",
                $"Name the facility's column under columns in [read.{columns.Section}] of study.toml, or give one value for every row under constants."
            );
    }

    // A column that study.toml names must be there, even one that a study can do without.
    private static bool IsNeeded(string column, CsvColumns columns, FileLayout layout) =>
        columns.Required.Contains(column) || layout.Columns.ContainsKey(column);
}
