using System.Collections.Frozen;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;
using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Matches a facility's header with the columns as study.toml names them. Other columns are not used.</summary>
internal static class MappedHeader
{
    private const int ManyMissing = 3;

    /// <summary>The places of each known column; null when the rows cannot be read.</summary>
    public static FrozenDictionary<string, ImmutableArray<int>>? Match(
        TableHeader header,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        TablePart part,
        HeaderSearch search,
        ImmutableArray<TableLine> lines,
        QueryList queries
    )
    {
        var stopsBefore = queries.StopCount;
        var places = new Dictionary<string, ImmutableArray<int>>(StringComparer.Ordinal);
        var missing = new List<(string Column, string Name)>();
        foreach (var column in columns.Names)
        {
            var names = part.Columns.GetValueOrDefault(column, layout.HeadersOf(column));
            var isConstant =
                part.Constants.ContainsKey(column)
                || (layout.Constants.ContainsKey(column) && !part.Columns.ContainsKey(column));
            var found = names.Select(name => header.Names.IndexOf(name)).ToImmutableArray();
            if (found.Contains(-1))
            {
                if (!isConstant && IsNeeded(column, columns, layout, part, header))
                {
                    missing.AddRange(
                        names
                            .Where((_, i) => found[i] < 0)
                            .Select(name => (Column: column, Name: name))
                    );
                }

                continue;
            }

            places.Add(column, found);
            foreach (var name in names)
            {
                ReportTwice(header, fileName, column, name, isConstant, queries);
            }
        }

        ReportMissing(missing, header, fileName, columns, search, lines, queries);
        if (layout.Columns.Count == 0 && layout.Parts.IsEmpty)
        {
            PersonalHeaders.Report(
                header.Names.Where(name => !columns.Names.Contains(name)),
                header.Line,
                fileName,
                columns.Section,
                queries
            );
        }

        ReportLeftAside(header, fileName, columns, layout, part, places, queries);
        CheckUnits(header, fileName, columns, layout, part, places, queries);
        return queries.StopCount > stopsBefore
            ? null
            : places.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static void ReportTwice(
        TableHeader header,
        string fileName,
        string column,
        string name,
        bool isConstant,
        QueryList queries
    )
    {
        if (isConstant || header.Names.LastIndexOf(name) > header.Names.IndexOf(name))
        {
            queries.Add(
                CsvQueries.DuplicateColumn,
                new QuerySource(fileName, header.Line, column),
                name,
                isConstant
                    ? $"The file has a column \"{name}\", and study.toml gives one value for every row."
                    : $"Two columns are called \"{name}\".",
                isConstant
                    ? "Remove the constant, or rename the column."
                    : "Rename or remove one of them; where a title above them tells them apart, give header_rows = 2."
            );
        }
    }

    // One header line that is not the right one is one query.
    private static void ReportMissing(
        List<(string Column, string Name)> missing,
        TableHeader header,
        string fileName,
        CsvColumns columns,
        HeaderSearch search,
        ImmutableArray<TableLine> lines,
        QueryList queries
    )
    {
        if (missing.Count == 0)
        {
            return;
        }

        if (MessageFile.IsName(fileName))
        {
            ReportMissingOfMessages(missing, fileName, columns, queries);
            return;
        }

        var hint =
            search.Elsewhere(lines, columns.Layout?.Form ?? new()) + search.Wide(header.Names);
        if (missing.Count >= ManyMissing)
        {
            queries.Add(
                CsvQueries.MissingColumn,
                new QuerySource(fileName, header.Line, null),
                "",
                FormattableString.Invariant(
                    $"{missing.Count} columns are missing in the header of line {header.Line}: {string.Join(", ", missing.Select(item => item.Name == item.Column ? $"\"{item.Name}\"" : $"\"{item.Name}\" (read as {item.Column})"))}.{hint}"
                ),
                $"Name the facility's columns under columns in [read.{columns.Section}] of study.toml, and give what is the same in every row under constants."
            );
            return;
        }

        foreach (var (column, name) in missing)
        {
            queries.Add(
                CsvQueries.MissingColumn,
                new QuerySource(fileName, header.Line, column),
                "",
                $"The column \"{name}\", read as \"{column}\", is missing.{NearestWord.Question(name, header.Names)}{hint}",
                $"Name the facility's column under columns in [read.{columns.Section}] of study.toml, or give one value for every row under constants."
            );
        }
    }

    private static void ReportMissingOfMessages(
        List<(string Column, string Name)> missing,
        string fileName,
        CsvColumns columns,
        QueryList queries
    )
    {
        var section = $"[read.{columns.Section}]";
        foreach (var (column, name) in missing)
        {
            queries.Add(
                CsvQueries.MissingColumn,
                new QuerySource(fileName, null, column),
                "",
                name == column
                    ? $"No field of a message is read as \"{column}\" without a setting."
                    : $"\"{name}\", read as \"{column}\", is no column that messages give.{NearestWord.Question(name, MessageColumns.Names)}",
                column == "time_point"
                    ? $"Say under time_point_of_tube in {section} of study.toml at which time point each tube is tested, or name a column under columns."
                    : $"Name under columns in {section} of study.toml one of {string.Join(", ", MessageColumns.Names)}{(column == "specimen" ? ", or give tube_pattern" : "")}, or give one value for every row under constants."
            );
        }
    }

    private static void ReportLeftAside(
        TableHeader header,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        TablePart part,
        Dictionary<string, ImmutableArray<int>> places,
        QueryList queries
    )
    {
        var used = places.Values.SelectMany(found => found).ToHashSet();
        foreach (var column in columns.Names)
        {
            if (
                header.Names.IndexOf(column) is >= 0 and var place
                && !used.Contains(place)
                && !part.Columns.ContainsKey(column)
            )
            {
                queries.AddOwn(
                    CsvQueries.OwnColumnLeftAside,
                    new QuerySource(fileName, header.Line, column),
                    column,
                    layout.HeaderOf(column)
                );
            }
        }
    }

    /// <summary>A unit in the header or below it that is not the stated one would give every result another meaning.</summary>
    private static void CheckUnits(
        TableHeader header,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        TablePart part,
        Dictionary<string, ImmutableArray<int>> places,
        QueryList queries
    )
    {
        var constant = part.Constants.GetValueOrDefault(
            "unit",
            layout.Constants.GetValueOrDefault("unit", "")
        );
        foreach (var column in columns.All.Where(column => column.Content == ColumnContent.Results))
        {
            foreach (var place in places.GetValueOrDefault(column.Name, []))
            {
                var unit = place < header.Units.Length ? header.Units[place] : "";
                var readAs = layout.WordOf("unit", unit);
                if (unit.Length > 0 && constant.Length > 0 && !IsSame(readAs, constant))
                {
                    queries.Add(
                        RowQueries.HeaderUnitDiffers,
                        new QuerySource(fileName, header.Line, column.Name),
                        unit,
                        $"The header \"{header.Names[place]}\" or the line below it states the unit \"{unit}\", and study.toml states \"{constant}\" for every row.",
                        "Correct the constant; where the file is right, remove it and write units = \"in the header\" or units = \"in the line below\"."
                    );
                }
            }
        }
    }

    private static bool IsSame(string first, string second) =>
        first == second || (UnitTable.Find(first) is { } unit && unit == UnitTable.Find(second));

    // A column that study.toml names must be there, even one that a study can do without.
    private static bool IsNeeded(
        string column,
        CsvColumns columns,
        FileLayout layout,
        TablePart part,
        TableHeader header
    ) =>
        layout.Columns.ContainsKey(column)
        || part.Columns.ContainsKey(column)
        || (
            columns.Required.Contains(column)
            && !(column == "specimen" && layout.TubePattern is not null)
            && !(column is "time_point" or "tube" && layout.TimePointOfTube.Count > 0)
            && !(column == "unit" && header.Units.Any(unit => unit.Length > 0))
        );
}
