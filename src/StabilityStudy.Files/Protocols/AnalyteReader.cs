using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads an analyte of protocol.toml.</summary>
internal static class AnalyteReader
{
    private const int MostDecimals = 6;

    public static Analyte Read(TomlTable table) =>
        new(
            Id: table.RequireText("id"),
            Name: table.RequireText("name"),
            Method: table.OptionalText("method"),
            Loinc: table.OptionalText("loinc"),
            Unit: table.RequireText("unit"),
            Decimals: table.RequireWhole("decimals", 0, MostDecimals),
            StandardWindow: ReadStandardWindow(
                table.RequireTable("standard_window", ProtocolKeys.StandardWindow)
            ),
            ManufacturerLimit: ReadManufacturerLimit(
                table.OptionalTable("manufacturer_limit", ProtocolKeys.ManufacturerLimit)
            ),
            BetweenRunCvPercent: table
                .OptionalTable("cv_percent", ProtocolKeys.CvPercent)
                ?.RequireDecimal("between_run", NumberRange.AboveZero),
            MeasuringInterval: ReadMeasuringInterval(table),
            DecisionLevels: ReadDecisionLevels(table),
            ErrorVarianceRatio: table.OptionalDecimal("error_variance_ratio", NumberRange.AboveZero)
                ?? 1,
            DriftShape: table.OptionalChoice("drift_shape", FileWords.DriftShapes)
                ?? DriftShape.Linear
        );

    private static WindowRule ReadStandardWindow(TomlTable table) =>
        new(Time: table.RequireLongDuration("time"), Source: table.RequireText("source"));

    private static WindowRule? ReadManufacturerLimit(TomlTable? table) =>
        table is null
            ? null
            : new(Time: table.RequireLongDuration("time"), Source: table.RequireText("document"));

    private static MeasuringInterval? ReadMeasuringInterval(TomlTable table)
    {
        if (!table.Has("measuring_interval"))
        {
            return null;
        }

        var (lowest, highest) = IntervalReader.Read(
            table,
            "measuring_interval",
            NumberRange.Any,
            allowEqual: false
        );
        return new MeasuringInterval(lowest, highest);
    }

    private static ImmutableArray<decimal> ReadDecisionLevels(TomlTable table)
    {
        var levels = table.OptionalDecimals("decision_levels", NumberRange.Any);
        if (
            table.IsSound("decision_levels")
            && levels.Zip(levels.Skip(1)).Any(p => p.First >= p.Second)
        )
        {
            table.Fault(
                "decision_levels",
                FileQueries.OutOfRange,
                "",
                "The decision levels are not ascending.",
                "List them from the lowest to the highest, each once."
            );
        }

        return levels;
    }
}
