using StabilityStudy.Files.Csv;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds the tables of a workbook, one a visible sheet.</summary>
internal static class DeliveredSheets
{
    /// <summary>The tables; none where nothing looks like one, with the reason.</summary>
    public static (ImmutableArray<DeliveredTable> Tables, string Reason) Of(
        string name,
        ReadOnlyMemory<byte> bytes,
        Func<string, bool> isName,
        StatedLayout stated
    )
    {
        var queries = new QueryList();
        var sheets = Workbook.VisibleSheets(bytes, name, queries);
        if (sheets.IsEmpty)
        {
            return (
                [],
                queries.ToImmutable() is [var query, ..] ? query.Message : "it has no visible sheet"
            );
        }

        var tables = ImmutableArray.CreateBuilder<DeliveredTable>();
        foreach (
            var sheet in sheets.Where(item =>
                stated.Text("sheet") is not { } named || named == item
            )
        )
        {
            if (
                Workbook.Read(bytes, sheet, name, "results", new QueryList()) is not { } read
                || DeliveredHeader.Find(
                    [.. read.Take(HeaderSearch.MostLines).Where(line => !line.IsEmpty)],
                    isName,
                    stated
                )
                    is not { } header
            )
            {
                continue;
            }

            var shape = TableShape.Of(
                header,
                read,
                read[0].Number == header.First.Number,
                isWorkbook: true
            );
            if (shape.Rows.IsEmpty)
            {
                continue;
            }

            var lines = new List<ReadLine>();
            var settings = new List<SuggestedSetting>();
            if (sheets.Length > 1)
            {
                lines.Add(ReadLine.Text("sheet", sheet));
                settings.Add(
                    new(
                        "sheet",
                        $"\"{sheet}\"",
                        HowSure.Likely,
                        FormattableString.Invariant($"one of {sheets.Length} visible sheets")
                    )
                );
            }

            lines.AddRange(ShapeLines.Of(shape));
            tables.Add(
                new(
                    name,
                    sheets.Length > 1 ? sheet : null,
                    shape,
                    [.. lines],
                    [.. settings, .. ShapeLines.InWords(shape, isWhole: true)],
                    FormattableString.Invariant(
                        $"{bytes.Length:N0} bytes, a workbook, looked at whole"
                    )
                )
            );
        }

        return (
            tables.ToImmutable(),
            tables.Count == 0 ? "no line of its sheets looks like the header of a table" : ""
        );
    }
}
