using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads a result and its unit, as specimens and controls have them.</summary>
internal static class ResultFields
{
    /// <summary>Reads a column of results; a query and a missing result when the text is none.</summary>
    public static ReportedResult ReadResult(CsvRow row, Analyte? analyte, Column<string> column)
    {
        var text = row.Read(column, isRequired: false);
        var words = analyte?.Categories ?? [];
        if (words.IsEmpty && row.Numbers.TryGetValue(text, out var known))
        {
            return known;
        }

        var (result, advice) = !words.IsEmpty
            ? ResultText.ReadCategory(text, words)
            : ResultText.Read(text);
        if (result is not null)
        {
            if (result is MeasuredResult)
            {
                row.Numbers.Add(text, result);
            }

            return result;
        }

        if (SpreadsheetDate.Is(text))
        {
            row.Add(
                RowQueries.BecameDate,
                column,
                text,
                $"\"{text}\" is a date: a spreadsheet turns a number such as 12.1 into one as it opens a file, and the number that was meant is lost.",
                "Look the result up in the instrument's record, and export the file again without opening it in a spreadsheet."
            );
            return new MissingResult(text, MissingReason.NoReportableResult);
        }

        // Of an analyte that could not be read nobody knows which words it has.
        if (analyte is null && !text.Any(char.IsDigit))
        {
            return new MissingResult(text, MissingReason.NoReportableResult);
        }

        row.Add(
            RowQueries.UnknownResult,
            column,
            text,
            $"\"{text}\" is not a result.",
            char.ToUpperInvariant(advice[0])
                + advice[1..]
                + (
                    text.Count(c => c == ',') == 1 && text.Any(char.IsAsciiDigit)
                        ? "; where the whole file has decimal commas, write decimal = \",\" into its table under [read] in study.toml."
                        : "."
                )
        );
        return new MissingResult(text, MissingReason.NoReportableResult);
    }

    /// <summary>Reads "unit", which only a number needs.</summary>
    public static string ReadUnit(CsvRow row, ReportedResult result, Analyte? analyte)
    {
        var unit = row.Read(
            ResultColumns.Unit,
            isRequired: result is not (MissingResult or CategoryResult)
        );
        if (
            unit.Length > 0
            && analyte is not null
            && !string.Equals(unit, analyte.Unit, StringComparison.Ordinal)
        )
        {
            row.Add(
                RowQueries.OtherUnit,
                ResultColumns.Unit,
                unit,
                $"The unit is \"{unit}\", and the protocol has \"{analyte.Unit}\" for {analyte.Id}; results are not converted unless study.toml says so.",
                UnitAdvice.Of(unit, analyte.Unit)
            );
        }

        return unit;
    }
}
