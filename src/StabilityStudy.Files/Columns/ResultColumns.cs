using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Csv.ColumnForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Columns;

/// <summary>The columns of results.csv: a row a result.</summary>
internal static class ResultColumns
{
    public static readonly ColumnTable<ResultRow> Table = new("results");

    // csharpier-ignore-start
    public static readonly Column<string> Specimen = Table.Add("specimen", Required, StudyCode, row => row.Specimen, "as in specimens.csv", "N-017");
    public static readonly Column<string> Tube = Table.Add("tube", Required, StudyCode, row => row.Tube, "as in specimens.csv", "A");
    public static readonly Column<string> Analyte = Table.Add("analyte", Required, Known("an analyte of the protocol", known => known.Analytes), row => row.Analyte, "what was measured", "aPTT");
    public static readonly Column<TestOccasion> TimePoint = Table.Add("time_point", Required, Occasion, row => row.Occasion, "for which planned delay it was tested", "6 h");
    public static readonly Column<int?> Replicate = Table.Add("replicate", Optional, Whole(NumberRange.Replicate), row => row.Replicate, "number of the replicate; 1 when empty", "1");
    public static readonly Column<DateTimeOffset?> TestedAt = Table.Add("tested_at", Required, OptionalTime, row => row.RecordedAt, "when it was tested; may be empty where there is no result", TubeColumns.TimeExample);
    public static readonly Column<string> Result = Table.Add("result", Required, ColumnForms.Result, row => row.Result.Text, "as reported; ERROR is failed, QNS too little plasma, NT not tested, NA or empty no reportable result", "31.4");
    public static readonly Column<string> Unit = Table.Add("unit", Required, Text.Of("the unit of the protocol"), row => row.Unit, "unit of the result", "s");
    public static readonly Column<string> Run = Table.Add("run", Optional, Text, row => row.Run, "code of the run, by which controls are found; without it no control shows that the run was in range", "2026-03-02-6H");
    public static readonly Column<string> Instrument = Table.Add("instrument", Optional, Known("an instrument of study.toml", known => known.Instruments), row => row.Instrument, "on what it was measured", "AN1");
    public static readonly Column<string> Lot = Table.Add("lot", Optional, Known("a lot of study.toml", known => known.Lots), row => row.Lot, "the reagent lot", "R-1");
    public static readonly Column<string> Calibration = Table.Add("calibration", Optional, Text, row => row.Calibration, "code of the calibration", "C-2");
    public static readonly Column<string> Operator = Table.Add("operator", Optional, Known("a person of study.toml", known => known.People) with { IsOfPersons = true }, row => row.Operator, "who tested", "LS1");
    public static readonly Column<string> Flag = Table.Add("flag", Optional, FreeText, row => row.Flag, "flag of the instrument, in its words", "E12");
    public static readonly Column<string> Remark = Table.Add("remark", Optional, FreeText, row => row.Remark, "anything else", "second aspiration");
    // csharpier-ignore-end
}
