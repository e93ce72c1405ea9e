using System.Globalization;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Canonical;

/// <summary>The fields of a canonical row, in the order of the columns.</summary>
internal static class CanonicalFields
{
    public static string[] Of(TubeRow tube) =>
        [
            tube.Specimen,
            tube.Tube,
            tube.Subject,
            tube.Group,
            tube.Storage,
            Text(tube.DrawPosition),
            StrictTime.Write(tube.CollectedAt),
            Text(tube.ReceivedAt),
            Text(tube.SpunAt),
            Text(tube.SeparatedAt),
            Text(tube.FrozenAt),
            Text(tube.ThawedAt),
            Text(tube.FillPercent),
            Text(tube.Inversions),
            Text(tube.HematocritPercent),
            FileWords.HemolysisGrades.Write(tube.Hemolysis),
            FileWords.ClotChecks.Write(tube.Clot),
            tube.Device,
            FileWords.Origins.Write(tube.Origin),
            Text(tube.SourceRow),
        ];

    public static string[] Of(ResultRow row) =>
        [
            row.Specimen,
            row.Tube,
            row.Analyte,
            row.Occasion.ToString(),
            Text(row.Replicate),
            Text(row.TestedAt),
            row.Result.Text,
            row.Unit,
            row.Run,
            row.Instrument,
            row.Lot,
            row.Calibration,
            row.Operator,
            row.Flag,
            row.Remark,
            Text(row.SourceRow),
        ];

    private static string Text(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Text(decimal? number) =>
        number?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Text(DateTimeOffset? time) =>
        time is { } known ? StrictTime.Write(known) : "";
}
