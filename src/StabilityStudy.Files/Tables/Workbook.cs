using System.IO.Compression;
using System.Text;
using ExcelDataReader;

namespace StabilityStudy.Files.Tables;

/// <summary>Reads a sheet of a workbook (.xlsx) as lines of a table.</summary>
internal static class Workbook
{
    /// <summary>How the name of a workbook ends.</summary>
    public const string Extension = ".xlsx";

    /// <summary>Most columns of a sheet.</summary>
    public const int MostColumns = 1024;

    /// <summary>Most cells of a sheet, empty ones counted.</summary>
    public const long MostCells = 20_000_000;

    private const string Visible = "visible";

    // The reader of workbooks asks for this code page as it starts, also where no text has it.
    static Workbook() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    /// <summary>Whether a name is that of a workbook.</summary>
    public static bool IsName(string name) =>
        name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase);

    /// <summary>The lines of a sheet; null after a query.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="sheet">Name of the sheet; null for the only visible one.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="section">Name of the table of study.toml that describes the file.</param>
    /// <param name="queries">Takes what does not fit.</param>
    public static ImmutableArray<TableLine>? Read(
        ReadOnlyMemory<byte> bytes,
        string? sheet,
        string fileName,
        string section,
        QueryList queries
    ) =>
        Open(
            bytes,
            fileName,
            queries,
            (reader, archive) => ReadSheet(reader, archive, sheet, fileName, section, queries),
            null
        );

    /// <summary>The names of the visible sheets.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="queries">Takes what does not fit.</param>
    public static ImmutableArray<string> VisibleSheets(
        ReadOnlyMemory<byte> bytes,
        string fileName,
        QueryList queries
    ) =>
        Open<ImmutableArray<string>>(
            bytes,
            fileName,
            queries,
            (reader, _) =>
                [.. SheetsOf(reader).Where(sheet => sheet.IsVisible).Select(sheet => sheet.Name)],
            []
        );

    private static T Open<T>(
        ReadOnlyMemory<byte> bytes,
        string fileName,
        QueryList queries,
        Func<IExcelDataReader, ZipArchive, T> read,
        T absent
    )
    {
        var fault = Fault(bytes.Span);
        if (fault is null)
        {
            // What is read here may be made to harm, and its reader throws exceptions of many kinds.
#pragma warning disable CA1031
            try
            {
                var copy = bytes.ToArray();
                using var archive = new ZipArchive(new MemoryStream(copy, writable: false));
                fault = WorkbookBounds.Check(archive);
                if (fault is null)
                {
                    using var reader = ExcelReaderFactory.CreateOpenXmlReader(
                        new MemoryStream(copy, writable: false)
                    );
                    return read(reader, archive);
                }
            }
            catch (Exception error) when (error is not OutOfMemoryException)
            {
                fault = new(
                    FileQueries.NotAWorkbook,
                    "The file is damaged, or not a workbook as spreadsheet programs write it.",
                    "Open it in a spreadsheet program and save it again as .xlsx, or save the sheet as CSV."
                );
            }
#pragma warning restore CA1031
        }

        queries.Add(
            fault.Kind,
            new QuerySource(fileName, null, null),
            "",
            fault.Message,
            fault.Action
        );
        return absent;
    }

    private static List<(string Name, bool IsVisible)> SheetsOf(IExcelDataReader reader)
    {
        var names = new List<(string Name, bool IsVisible)>();
        do
        {
            names.Add((reader.Name, reader.VisibleState == Visible));
        } while (reader.NextResult());

        return names;
    }

    private static WorkbookFault? Fault(ReadOnlySpan<byte> bytes) =>
        bytes.Length > StudyLimits.WorkbookBytes
            ? new(
                FileQueries.FileTooLarge,
                $"The workbook is larger than {StudyLimits.InWords(StudyLimits.WorkbookBytes)}.",
                "Save only the sheet with the data, or save it as CSV."
            )
        : bytes.StartsWith<byte>([0xD0, 0xCF, 0x11, 0xE0])
            ? new(
                FileQueries.NotAWorkbook,
                "The file is protected by a password, or has the form of spreadsheets before 2007.",
                "Save it as .xlsx without a password."
            )
        : null;

    private static ImmutableArray<TableLine>? ReadSheet(
        IExcelDataReader reader,
        ZipArchive archive,
        string? sheet,
        string fileName,
        string section,
        QueryList queries
    )
    {
        if (Choose(SheetsOf(reader), sheet, fileName, section, queries) is not { } chosen)
        {
            return null;
        }

        reader.Reset();
        for (var i = 0; i < chosen; i++)
        {
            reader.NextResult();
        }

        if (
            reader.FieldCount > MostColumns
            || reader.RowCount > StudyLimits.TableLines
            || (long)reader.FieldCount * reader.RowCount > MostCells
        )
        {
            queries.Add(
                FileQueries.FileTooLarge,
                new QuerySource(fileName, null, null),
                FormattableString.Invariant($"{reader.RowCount} rows, {reader.FieldCount} columns"),
                FormattableString.Invariant(
                    $"The sheet \"{reader.Name}\" reaches over {reader.RowCount} rows and {reader.FieldCount} columns; at most {MostColumns} columns and {MostCells / 1_000_000} million cells are read."
                ),
                "Delete the empty rows and columns behind the data, which a format alone can make long, or save the sheet as CSV."
            );
            return null;
        }

        var scan = SheetScan.Of(archive, chosen);
        if (scan.WithoutValue is { } cell)
        {
            queries.Add(
                FileQueries.FormulaWithoutValue,
                new QuerySource(fileName, null, null),
                cell,
                $"The formula of cell {cell} has no stored value, so that the cell would be read as empty."
            );
            return null;
        }

        return Lines(reader, scan, fileName, queries);
    }

    private static int? Choose(
        List<(string Name, bool IsVisible)> names,
        string? sheet,
        string fileName,
        string section,
        QueryList queries
    )
    {
        var visible = names.Where(item => item.IsVisible).Select(item => item.Name).ToArray();
        var place = sheet is null
            ? (visible is [var only] ? names.FindIndex(item => item.Name == only) : -1)
            : names.FindIndex(item => string.Equals(item.Name, sheet, StringComparison.Ordinal));
        if (place >= 0)
        {
            return place;
        }

        var listed = string.Join(", ", names.Select(item => $"\"{item.Name}\""));
        queries.Add(
            FileQueries.SheetNotStated,
            new QuerySource(fileName, null, null),
            sheet ?? "",
            sheet is null
                ? FormattableString.Invariant(
                    $"The workbook has {visible.Length} visible sheets, and study.toml does not say which is meant."
                )
                : $"The workbook has no sheet \"{sheet}\".{NearestWord.Question(sheet, names.Select(item => item.Name))}",
            $"Write sheet = \"…\" under [read.{section}] in study.toml, with one of {listed}."
        );
        return null;
    }

    private static ImmutableArray<TableLine> Lines(
        IExcelDataReader reader,
        SheetScan scan,
        string fileName,
        QueryList queries
    )
    {
        var merged = new Queue<CellRange>(
            (reader.MergeCells ?? []).OrderBy(range => range.FromRow)
        );
        var reaching = new List<CellRange>();
        var lines = ImmutableArray.CreateBuilder<TableLine>();
        var hidden = new List<int>();
        var number = 0;
        while (reader.Read())
        {
            number++;
            var cells = new TableCell[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] =
                    scan.Errors.Count > 0 && scan.Errors.TryGetValue((number, i), out var error)
                        ? new(error, CellKind.Error)
                        : CellReading.Read(reader, i);
            }

            while (merged.TryPeek(out var next) && next.FromRow < number)
            {
                reaching.Add(merged.Dequeue());
            }

            reaching.RemoveAll(range => range.ToRow < number - 1);
            foreach (var range in reaching)
            {
                Merge(range, number - 1, cells);
            }

            var line = new TableLine(number, cells);
            if (!line.IsEmpty)
            {
                lines.Add(line);
                if (reader.RowHeight == 0)
                {
                    hidden.Add(number);
                }
            }
        }

        ReportHidden("row", hidden, fileName, queries);
        ReportHidden(
            "column",
            [
                .. Enumerable
                    .Range(0, reader.FieldCount)
                    .Where(i => reader.GetColumnWidth(i) == 0)
                    .Select(i => i + 1),
            ],
            fileName,
            queries
        );
        return lines.ToImmutable();
    }

    private static void Merge(CellRange range, int row, TableCell[] cells)
    {
        for (var i = range.FromColumn; i <= Math.Min(range.ToColumn, cells.Length - 1); i++)
        {
            if (row > range.FromRow || i > range.FromColumn)
            {
                cells[i] = new("", CellKind.Merged);
            }
        }
    }

    private static void ReportHidden(
        string what,
        List<int> places,
        string fileName,
        QueryList queries
    )
    {
        if (places.Count > 0)
        {
            queries.AddOwn(
                FileQueries.HiddenCells,
                new QuerySource(fileName, what == "row" ? places[0] : null, null),
                "",
                what,
                places[0].ToString(CultureInfo.InvariantCulture),
                places.Count.ToString(CultureInfo.InvariantCulture)
            );
        }
    }
}
