using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads controls.csv: a row a control result.</summary>
internal static class ControlReader
{
    private static readonly Column<decimal?> NumberOfTarget = ControlColumns.Target.In(
        ColumnForms.Number(NumberRange.Any)
    );

    /// <summary>Reads the rows that can be read.</summary>
    public static RowTable<ControlRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        int linesBefore = 0
    ) =>
        RowTable<ControlRow>.Read(
            TablePart.Of(utf8, linesBefore),
            fileName,
            columns,
            known,
            queries,
            ReadRow,
            control => new TubeKey(control.Control, control.Run)
        );

    private static ControlRow ReadRow(CsvRow row)
    {
        var analyte = row.Read(ControlColumns.Analyte);
        var planned = row.Known.AnalyteById.GetValueOrDefault(analyte);
        var isQualitative = planned is { IsQualitative: true };
        var result = ResultFields.ReadResult(row, planned, ControlColumns.Result);
        var control = new ControlRow(
            SourceRow: row.Line,
            Control: row.Read(ControlColumns.Control),
            Analyte: analyte,
            Run: row.Read(ControlColumns.Run),
            TestedAt: row.Read(ControlColumns.TestedAt),
            Result: result,
            Unit: ResultFields.ReadUnit(row, result, planned),
            Target: isQualitative ? null : row.Read(NumberOfTarget),
            AllowedLow: row.Read(ControlColumns.AllowedLow),
            AllowedHigh: row.Read(ControlColumns.AllowedHigh),
            Kind: row.Read(ControlColumns.Kind)
        )
        {
            Expected =
                isQualitative && !row.IsEmpty(ControlColumns.Target)
                    ? ResultFields.ReadResult(row, planned, ControlColumns.Target) as CategoryResult
                    : null,
        };
        if (row.IsSound)
        {
            CheckRange(row, control);
        }

        return control;
    }

    // A bridging plasma is compared with itself.
    private static void CheckRange(CsvRow row, ControlRow control)
    {
        if (control.AllowedLow > control.AllowedHigh)
        {
            row.Add(
                RowQueries.ControlRangeReversed,
                ControlColumns.AllowedLow,
                FormattableString.Invariant($"{control.AllowedLow} to {control.AllowedHigh}"),
                "The lowest allowed result is above the highest."
            );
        }
        else if (control is { Kind: ControlKind.Control, Result: CategoryResult, Expected: null })
        {
            row.Add(
                RowQueries.ControlWithoutRange,
                ControlColumns.Target,
                "",
                $"The control \"{control.Control}\" has no expected class, so nobody can see whether it was right.",
                "Fill in \"target\" with the class that the control should give."
            );
        }
        else if (
            control is { Kind: ControlKind.Control, Result: not CategoryResult }
            && (control.AllowedLow is null || control.AllowedHigh is null)
        )
        {
            var column = control.AllowedLow is null
                ? ControlColumns.AllowedLow
                : ControlColumns.AllowedHigh;
            row.Add(
                RowQueries.ControlWithoutRange,
                column,
                "",
                $"The control \"{control.Control}\" has no allowed range, so nobody can see whether it was in range.",
                $"Fill in \"{column.Name}\", or write \"bridging plasma\" in \"kind\"."
            );
        }
    }
}
