using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Csv.ColumnForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Columns;

/// <summary>The columns of controls.csv: a row a control result.</summary>
internal static class ControlColumns
{
    public static readonly ColumnTable<ControlRow> Table = new("controls");

    // csharpier-ignore-start
    public static readonly Column<string> Control = Table.Add("control", Required, StudyCode, row => row.Control, "code of the control", "QC-1");
    public static readonly Column<string> Analyte = Table.Add("analyte", Required, ResultColumns.Analyte.Form, row => row.Analyte, "what was measured", "aPTT");
    public static readonly Column<string> Run = Table.Add("run", Required, Text, row => row.Run, "the run in which it was tested, as in results.csv", "2026-03-02-6H");
    public static readonly Column<DateTimeOffset> TestedAt = Table.Add("tested_at", Required, Time, row => row.RecordedAt, "when it was tested", TubeColumns.TimeExample);
    public static readonly Column<string> Result = Table.Add("result", Required, ColumnForms.Result, row => row.Result.Text, "as in results.csv", "29.9");
    public static readonly Column<string> Unit = Table.Add("unit", Required, ResultColumns.Unit.Form, row => row.Unit, "unit of the result", "s");
    public static readonly Column<string> Target = Table.Add("target", Depends, ColumnForms.Result.Of("a number, or a word of the protocol's categories"), row => row.Expected?.Text ?? row.Target?.ToString(CultureInfo.InvariantCulture) ?? "", "its target; for a qualitative test the class that it should give, needed for a control", "30.0");
    public static readonly Column<decimal?> AllowedLow = Table.Add("allowed_low", Depends, Number(NumberRange.Any), row => row.AllowedLow, "lowest result in range; needed for a control of a quantity", "28.1");
    public static readonly Column<decimal?> AllowedHigh = Table.Add("allowed_high", Depends, Number(NumberRange.Any), row => row.AllowedHigh, "highest result in range; needed for a control of a quantity", "31.9");
    public static readonly Column<ControlKind> Kind = Table.Add("kind", Optional, Word(FileWords.ControlKinds), row => row.Kind, "control when empty; a bridging plasma is the same plasma in every run, whose shift shows what runs add", "control");
    // csharpier-ignore-end
}
