using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Canonical;

/// <summary>The fields of a canonical row, in the order of the columns.</summary>
internal static class CanonicalFields
{
    public static void Write(TubeRow tube, CanonicalLine line) =>
        line.Text(tube.Specimen)
            .Text(tube.Tube)
            .Text(tube.Subject)
            .Text(tube.Group)
            .Text(tube.Storage)
            .Number(tube.DrawPosition)
            .Time(tube.CollectedAt)
            .Time(tube.ReceivedAt)
            .Time(tube.SpunAt)
            .Time(tube.SeparatedAt)
            .Time(tube.FrozenAt)
            .Time(tube.ThawedAt)
            .Number(tube.FillPercent)
            .Number(tube.Inversions)
            .Number(tube.HematocritPercent)
            .Text(FileWords.HemolysisGrades.Write(tube.Hemolysis))
            .Text(FileWords.ClotChecks.Write(tube.Clot))
            .Text(tube.Device)
            .Text(FileWords.Origins.Write(tube.Origin))
            .Number(tube.SourceRow)
            .End();

    public static void Write(ControlRow row, CanonicalLine line)
    {
        var start = line.Text(row.Control)
            .Text(row.Analyte)
            .Text(row.Run)
            .Time(row.TestedAt)
            .Text(row.Result.Text)
            .Text(row.Unit);
        var target = row.Expected is { } expected
            ? start.Text(expected.Text)
            : start.Number(row.Target);
        target
            .Number(row.AllowedLow)
            .Number(row.AllowedHigh)
            .Text(FileWords.ControlKinds.Write(row.Kind))
            .Number(row.SourceRow)
            .End();
    }

    public static void Write(ResultRow row, CanonicalLine line) =>
        line.Text(row.Specimen)
            .Text(row.Tube)
            .Text(row.Analyte)
            .Text(row.Occasion.ToString())
            .Number(row.Replicate)
            .Time(row.TestedAt)
            .Text(row.Result.Text)
            .Text(row.Unit)
            .Text(row.Run)
            .Text(row.Instrument)
            .Text(row.Lot)
            .Text(row.Calibration)
            .Text(row.Operator)
            .Text(row.Flag)
            .Text(row.Remark)
            .Number(row.SourceRow)
            .End();
}
