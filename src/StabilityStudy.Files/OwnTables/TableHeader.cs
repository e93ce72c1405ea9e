using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;
using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.OwnTables;

/// <summary>The header of a table: names and units.</summary>
/// <param name="Line">The line on which it begins.</param>
/// <param name="Names">The name of each column.</param>
/// <param name="Units">The unit of each column; empty where the file states none.</param>
/// <param name="Lines">The lines of the header as they stand, with that of the units, which may be repeated.</param>
internal sealed record TableHeader(
    int Line,
    ImmutableArray<string> Names,
    ImmutableArray<string> Units,
    ImmutableArray<TableLine> Lines
)
{
    /// <summary>The first line of the header.</summary>
    public TableLine First => Lines[0];

    /// <summary>Reads the header; null after a query.</summary>
    public static TableHeader? Read(
        IEnumerator<TableLine> lines,
        string fileName,
        CsvColumns columns,
        FileLayout layout,
        HeaderSearch search,
        ImmutableArray<TableLine> preamble,
        QueryList queries
    )
    {
        var form = layout.Form;
        var stopsBefore = queries.StopCount;
        if (!Next(lines) || (form.HeaderLine is { } stated && lines.Current.Number != stated))
        {
            if (queries.StopCount == stopsBefore)
            {
                queries.Add(
                    CsvQueries.EmptyFile,
                    new QuerySource(fileName, form.HeaderLine, null),
                    "",
                    form.HeaderLine is { } line
                        ? FormattableString.Invariant(
                            $"Nothing stands on line {line}, where study.toml says that the header is.{search.Elsewhere(preamble, form)}"
                        )
                        : "The file has no header line.",
                    form.HeaderLine is null
                        ? $"Begin the file with the column names: {string.Join(",", columns.Required)}."
                        : $"Correct header_line under [read.{columns.Section}] in study.toml."
                );
            }

            return null;
        }

        var first = lines.Current;
        var taken = ImmutableArray.CreateBuilder<TableLine>();
        taken.Add(first);
        if (
            OtherForm.ReportDelimiter(
                [.. first.Cells.Select(cell => cell.Text)],
                first.Number,
                fileName,
                columns.Section,
                queries,
                Workbook.IsName(fileName) ? ' ' : layout.Delimiter
            )
        )
        {
            return null;
        }

        for (var i = 1; i < form.HeaderRows && Next(lines); i++)
        {
            taken.Add(lines.Current);
        }

        var titles = NamesOf(taken);
        var units = UnitsOf(lines, form, titles.Length, taken);
        return queries.StopCount > stopsBefore
            ? null
            : new(first.Number, titles, units, taken.ToImmutable());
    }

    /// <summary>The names of the columns under one line of names, or several that are joined.</summary>
    public static ImmutableArray<string> NamesOf(IReadOnlyList<TableLine> lines) =>
        [.. PartsOf(lines).Select(parts => string.Join(' ', parts.Where(part => part.Length > 0)))];

    /// <summary>The unit in brackets at the end of a name or, in a header of several lines, of one of its parts; empty where there is none.</summary>
    /// <param name="lines">The lines of the header.</param>
    /// <param name="isUnit">Whether it is one.</param>
    public static ImmutableArray<string> UnitsIn(
        IReadOnlyList<TableLine> lines,
        Func<string, bool> isUnit
    ) =>
        [
            .. PartsOf(lines)
                .Select(parts =>
                    parts.Select(UnitIn).LastOrDefault(unit => unit.Length > 0 && isUnit(unit))
                    ?? ""
                ),
        ];

    // What stands in each line above a column, with a title over several columns in each of them.
    private static IEnumerable<string[]> PartsOf(IReadOnlyList<TableLine> lines)
    {
        var upper =
            lines.Count > 1
                ? Filled(lines[0].Cells)
                : [.. lines[0].Cells.Select(cell => cell.Text.Trim())];
        return upper.Select(
            (name, place) =>
                lines.Skip(1).Select(line => line.TextAt(place).Trim()).Prepend(name).ToArray()
        );
    }

    /// <summary>Goes on to the next line on which something stands.</summary>
    public static bool Next(IEnumerator<TableLine> lines)
    {
        while (lines.MoveNext())
        {
            if (!lines.Current.IsEmpty)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The unit in brackets at the end of a header: "aPTT (s)"; empty where there is none.</summary>
    public static string UnitIn(string header)
    {
        var name = header.TrimEnd();
        var (open, close) =
            name.EndsWith(')') ? ('(', ')')
            : name.EndsWith(']') ? ('[', ']')
            : (' ', ' ');
        var at = open == ' ' ? -1 : name.LastIndexOf(open);

        // The brackets of a unit itself, as in "anti-Xa ([IU]/mL)" or "D-dimer (mg/L (FEU))".
        while (at > 0 && name[at..].Count(c => c == open) < name[at..].Count(c => c == close))
        {
            at = name.LastIndexOf(open, at - 1);
        }

        return at < 0 ? "" : name[(at + 1)..^1].Trim();
    }

    private static ImmutableArray<string> UnitsOf(
        IEnumerator<TableLine> lines,
        TableForm form,
        int count,
        ImmutableArray<TableLine>.Builder taken
    )
    {
        if (form.Units == UnitPlace.LineBelow && Next(lines))
        {
            var below = lines.Current;
            taken.Add(below);
            return
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(place => below.TextAt(place).Trim().Trim('(', ')').Trim()),
            ];
        }

        // Brackets that hold a known unit are compared with what is stated, even where study.toml does not look for it there.
        return UnitsIn(
            taken,
            unit => form.Units == UnitPlace.Header || UnitTable.Find(unit) is not null
        );
    }

    // A title over several columns stands in the first of them.
    private static string[] Filled(TableCell[] cells)
    {
        var names = new string[cells.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            names[i] =
                cells[i].Text.Trim() is { Length: > 0 } own ? own
                : i > 0 ? names[i - 1]
                : "";
        }

        return names;
    }
}
