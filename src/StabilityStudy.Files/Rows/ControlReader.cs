using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads controls.csv: a row a control result.</summary>
internal static class ControlReader
{
    /// <summary>Reads the rows that can be read.</summary>
    public static RowTable<ControlRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries
    ) =>
        RowTable<ControlRow>.Read(
            utf8,
            fileName,
            columns,
            queries,
            row => ReadRow(row, known),
            control => new TubeKey(control.Control, control.Run)
        );

    private static ControlRow ReadRow(CsvRow row, KnownCodes known)
    {
        var analyte = row.RequireKnown("analyte", known.Analytes);
        var planned = known.AnalyteById.GetValueOrDefault(analyte);
        var result = ResultFields.ReadResult(row, planned, "result");
        var control = new ControlRow(
            SourceRow: row.Line,
            Control: row.RequireStudyCode("control"),
            Analyte: analyte,
            Run: row.RequireText("run"),
            TestedAt: row.RequireTime("tested_at", known.Times),
            Result: result,
            Unit: ResultFields.ReadUnit(row, result, planned),
            Target: planned is { IsQualitative: true }
                ? null
                : row.OptionalDecimal("target", NumberRange.Any),
            AllowedLow: row.OptionalDecimal("allowed_low", NumberRange.Any),
            AllowedHigh: row.OptionalDecimal("allowed_high", NumberRange.Any),
            Kind: row.Choice("kind", FileWords.ControlKinds)
        )
        {
            Expected =
                planned is { IsQualitative: true } && row.OptionalText("target").Length > 0
                    ? ResultFields.ReadResult(row, planned, "target") as CategoryResult
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
                "allowed_low",
                FormattableString.Invariant($"{control.AllowedLow} to {control.AllowedHigh}"),
                "The lowest allowed result is above the highest.",
                "Correct allowed_low and allowed_high."
            );
        }
        else if (control is { Kind: ControlKind.Control, Result: CategoryResult, Expected: null })
        {
            row.Add(
                RowQueries.ControlWithoutRange,
                "target",
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
            var column = control.AllowedLow is null ? "allowed_low" : "allowed_high";
            row.Add(
                RowQueries.ControlWithoutRange,
                column,
                "",
                $"The control \"{control.Control}\" has no allowed range, so nobody can see whether it was in range.",
                $"Fill in \"{column}\", or write \"bridging plasma\" in \"kind\"."
            );
        }
    }
}
