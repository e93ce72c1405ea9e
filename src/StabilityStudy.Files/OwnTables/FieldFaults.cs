using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Finds what a field of a facility's table may say beside what it seems to say.</summary>
internal static class FieldFaults
{
    /// <summary>Why a cell of a column cannot be taken at its word; null when it can.</summary>
    public static FieldFault? Of(Column column, TableCell cell, FileLayout layout) =>
        column.IsFreeText && cell.Kind != CellKind.Refused
            ? null
            : cell.Kind switch
            {
                CellKind.Text => layout.HasOtherPoint(column, cell.Text)
                    ? new(
                        CsvQueries.DecimalPoint,
                        cell.Text,
                        $"\"{cell.Text}\" has a point, and study.toml says that decimals follow a comma: it may be a thousand times the number meant."
                    )
                    : null,
                CellKind.Refused => cell.Fault,
                CellKind.Merged => new(
                    RowQueries.MergedCell,
                    "",
                    "The cell is merged with another one, and only the first of merged cells has a content.",
                    "Take the merging of the cells back and fill in each row."
                ),
                CellKind.Error => new(
                    RowQueries.CellError,
                    cell.Text,
                    $"The formula of the cell gives the error {cell.Text}.",
                    "Correct the formula, or write the value as it was reported."
                ),
                CellKind.Number
                or CellKind.RoundedNumber
                or CellKind.DisguisedNumber
                or CellKind.Date
                or CellKind.DateAndTime
                or CellKind.TimeOfDay
                or CellKind.Duration => column.Content == ColumnContent.Times
                    ? OfTimes(cell)
                    : OfNumbers(cell, layout),
            };

    private static FieldFault? OfNumbers(TableCell cell, FileLayout layout) =>
        cell.Kind
            is CellKind.Date
                or CellKind.DateAndTime
                or CellKind.TimeOfDay
                or CellKind.Duration
            ? new(
                RowQueries.BecameDate,
                cell.Text,
                $"The spreadsheet holds a date or time here ({cell.Text}): it turns what looks like one, such as 12.1 or 3-2, into a date as it is typed, and the number that was meant is lost.",
                "Look the value up in the instrument's record, format the column as text and write it again."
            )
        : cell.Kind == CellKind.DisguisedNumber
            ? new(
                RowQueries.CellFormat,
                cell.Text,
                $"The cell stores {cell.Text} and shows it by the format \"{cell.Other}\", which may add a sign, a word or a percentage, or scale the number.",
                "Format the cell as a plain number or as text, so that it shows what was reported."
            )
        : cell.Kind == CellKind.RoundedNumber && layout.Form.Numbers is null
            ? new(
                RowQueries.ShownOtherwise,
                cell.Text,
                $"Shown {cell.Text}, stored {cell.Other}: the cell rounds what it shows.",
                "Look up which was reported, and write numbers = \"as shown\" or numbers = \"as stored\" into the table of the file under [read] in study.toml."
            )
        : null;

    private static FieldFault? OfTimes(TableCell cell) =>
        cell.Kind is CellKind.Number or CellKind.RoundedNumber or CellKind.DisguisedNumber
            ? new(
                RowQueries.NotATime,
                cell.Text,
                $"The cell holds the number {cell.Text} and not a date and time.",
                "A spreadsheet counts days: format the column as date and time, see whether the times are right, and save the workbook again."
            )
        : cell.Kind == CellKind.Duration
            ? new(
                RowQueries.NotATime,
                cell.Text,
                $"The cell holds the span of time {cell.Text} and not a date and time.",
                "Write the date and the time of day at which it was."
            )
        : null;
}
