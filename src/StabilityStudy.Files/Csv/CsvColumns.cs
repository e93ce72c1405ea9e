using System.Collections.Immutable;

namespace StabilityStudy.Files.Csv;

/// <summary>The columns of a file, in the order in which the canonical file has them.</summary>
/// <param name="All">Every known column.</param>
/// <param name="Required">Those that every file must have.</param>
internal sealed record CsvColumns(ImmutableArray<string> All, ImmutableArray<string> Required)
{
    /// <summary>The column of a canonical file that holds the line in the facility's file.</summary>
    public const string SourceRow = "source_row";

    /// <summary>The columns of specimens.csv.</summary>
    public static readonly CsvColumns Specimens = new(
        [
            "specimen",
            "tube",
            "subject",
            "group",
            "storage",
            "draw_position",
            "collected_at",
            "received_at",
            "spun_at",
            "separated_at",
            "frozen_at",
            "thawed_at",
            "fill_percent",
            "inversions",
            "hematocrit_percent",
            "hemolysis",
            "clot",
            "device",
            "origin",
        ],
        ["specimen", "tube", "subject", "group", "storage", "collected_at"]
    );

    /// <summary>The columns of results.csv.</summary>
    public static readonly CsvColumns Results = new(
        [
            "specimen",
            "tube",
            "analyte",
            "time_point",
            "replicate",
            "tested_at",
            "result",
            "unit",
            "run",
            "instrument",
            "lot",
            "calibration",
            "operator",
            "flag",
            "remark",
        ],
        ["specimen", "tube", "analyte", "time_point", "tested_at", "result", "unit"]
    );

    /// <summary>The same with the line in the facility's file, as a canonical file has it.</summary>
    public CsvColumns WithSourceRow() => new([.. All, SourceRow], [.. All, SourceRow]);
}
