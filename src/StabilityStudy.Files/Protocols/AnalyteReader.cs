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

    /// <summary>The UCUM unit of what has none.</summary>
    private const string NoUnit = "1";

    /// <summary>Keys that mean something for numbers only.</summary>
    internal static readonly ImmutableArray<string> KeysOfNumbers =
    [
        "decimals",
        "cv_percent",
        "measuring_interval",
        "decision_levels",
        "error_variance_ratio",
        "drift_shape",
        "ratio_of",
    ];

    public static Analyte Read(TomlTable table)
    {
        var categories = ReadCategories(table);
        var isQualitative = table.Has("categories");
        if (isQualitative)
        {
            RefuseKeysOfNumbers(table);
        }

        return new(
            Id: table.RequireText("id"),
            Name: table.RequireText("name"),
            Method: table.OptionalText("method"),
            Loinc: table.OptionalText("loinc"),
            Unit: isQualitative ? table.OptionalText("unit") ?? NoUnit : table.RequireText("unit"),
            Decimals: isQualitative ? 0 : table.RequireWhole("decimals", 0, MostDecimals),
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
            DecisionLevels: AscendingNumbers.Read(table, "decision_levels", "decision levels"),
            ErrorVarianceRatio: table.OptionalDecimal("error_variance_ratio", NumberRange.AboveZero)
                ?? 1,
            DriftShape: table.OptionalChoice("drift_shape", FileWords.DriftShapes)
                ?? DriftShape.Linear
        )
        {
            TimePoints = [.. table.OptionalDurations("time_points").Select(d => new TimePoint(d))],
            Groups = table.OptionalTexts("groups"),
            Storages = table.OptionalTexts("storages"),
            GroupWindows =
            [
                .. table
                    .Tables("group_windows", ProtocolKeys.GroupWindow, required: false)
                    .Select(ReadGroupWindow),
            ],
            Categories = categories,
            RatioOf = table.OptionalText("ratio_of"),
        };
    }

    private static GroupWindow ReadGroupWindow(TomlTable table) =>
        new(Group: table.RequireText("group"), Rule: ReadStandardWindow(table));

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

    private static ImmutableArray<string> ReadCategories(TomlTable table)
    {
        var categories = table.OptionalTexts("categories");
        if (
            table.IsSound("categories")
            && (
                categories.Length < 2
                || categories.Distinct(StringComparer.OrdinalIgnoreCase).Count() < categories.Length
            )
        )
        {
            table.Fault(
                "categories",
                FileQueries.OutOfRange,
                string.Join(", ", categories),
                "A qualitative test has two or more different results.",
                "List them from the most negative to the most positive, each once."
            );
        }

        return categories;
    }

    private static void RefuseKeysOfNumbers(TomlTable table)
    {
        foreach (var key in KeysOfNumbers.Where(table.Has))
        {
            table.Fault(
                key,
                FileQueries.UnknownKey,
                key,
                $"\"{key}\" has no meaning for a test with \"categories\".",
                "Remove it, or remove the categories."
            );
        }
    }
}
