using System.Collections.Immutable;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Facts;

/// <summary>Every key of study.toml.</summary>
internal static class FactsKeys
{
    public static readonly TableShape Root = new(
        "",
        "format",
        "title",
        "facility",
        "question",
        "invented",
        "time_zone",
        "person",
        "instrument",
        "lot",
        "clock",
        "files",
        "read",
        "exclusion",
        "deviation",
        "rerun"
    );

    public static readonly TableShape Person = new("person", "code", "name", "role");

    public static readonly TableShape Instrument = new("instrument", "id", "name");

    public static readonly TableShape Lot = new(
        "lot",
        "id",
        "kind",
        "analyte",
        "expires",
        "isi",
        "mean_normal_time"
    );

    /// <summary>The time columns of the data files.</summary>
    public static readonly TableShape Clock = new(
        "clock",
        "collected_at",
        "received_at",
        "spun_at",
        "separated_at",
        "frozen_at",
        "thawed_at",
        "tested_at"
    );

    public static readonly TableShape Files = new("files", "specimens", "results", "controls");

    public static readonly TableShape Exclusion = new(
        "exclusion",
        "specimen",
        "analyte",
        "time_point",
        "reason",
        "by",
        "on",
        "time"
    );

    public static readonly TableShape Deviation = new("deviation", "text", "by", "on");

    public static readonly TableShape Rerun = new(
        "rerun",
        "specimen",
        "analyte",
        "time_point",
        "reason",
        "by",
        "on"
    );

    /// <summary>Every table, for documentation that must name each key.</summary>
    public static readonly ImmutableArray<TableShape> All =
    [
        Root,
        Person,
        Instrument,
        Lot,
        Clock,
        Files,
        LayoutReader.Read,
        LayoutReader.Section,
        LayoutReader.Pairs,
        Exclusion,
        Deviation,
        Rerun,
    ];
}
