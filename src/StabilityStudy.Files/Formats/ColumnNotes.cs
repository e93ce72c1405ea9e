using System.Collections.Immutable;
using StabilityStudy.Files.Words;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Formats;

/// <summary>What each column of the data files is for.</summary>
internal static class ColumnNotes
{
    private const string Time = "2026-03-02T07:42-05:00";

    public static readonly ImmutableArray<ColumnNote> Specimens =
    [
        new("specimen", Required, "study code of the specimen, never a patient's number", "N-017"),
        new("tube", Required, "code of the tube, unique within the specimen", "A"),
        new("subject", Required, "study code of the person", "S017"),
        new("group", Required, "a group of the protocol", "none"),
        new("storage", Required, "a storage of the protocol, in which the tube waited", "wb-rt"),
        new("draw_position", Optional, "place of the tube in the draw, 1 first", "2"),
        new("collected_at", Required, "when it was collected", Time),
        new("received_at", Optional, "when it reached the laboratory", Time),
        new(
            "spun_at",
            Depends,
            "when it was spun; without it the state in which a delayed tube waited is not known, and its result is left out",
            Time
        ),
        new(
            "separated_at",
            Depends,
            "when the plasma was taken off the cells; needed for separated plasma",
            Time
        ),
        new("frozen_at", Depends, "when the plasma was frozen; needed for frozen storage", Time),
        new("thawed_at", Depends, "when it was thawed; needed for frozen storage", Time),
        new(
            "fill_percent",
            Optional,
            "fill, percent of nominal; needed where the protocol asks for a least fill",
            "96"
        ),
        new("inversions", Optional, "how often the tube was inverted", "4"),
        new("hematocrit_percent", Optional, "hematocrit, percent; once a specimen is enough", "41"),
        new("hemolysis", Optional, "none, slight, moderate or gross", "none"),
        new("clot", Optional, "no or yes; empty is not the same as no", "no"),
        new("device", Optional, "how it was drawn", "straight needle"),
        new("origin", Optional, "native, spiked or pool", "native"),
    ];

    public static readonly ImmutableArray<ColumnNote> Results =
    [
        new("specimen", Required, "as in specimens.csv", "N-017"),
        new("tube", Required, "as in specimens.csv", "A"),
        new("analyte", Required, "an analyte of the protocol", "aPTT"),
        new("time_point", Required, "baseline, or a time point of the protocol", "6 h"),
        new("replicate", Optional, "number of the replicate; 1 when empty", "1"),
        new(
            "tested_at",
            Required,
            "when it was tested; may be empty where there is no result",
            Time
        ),
        new(
            "result",
            Required,
            "as reported: a number, <n or >n, a word of the protocol's categories, or CLOT, FIBRIN, HEMOLYSIS, ERROR (failed), QNS (too little plasma), NT (not tested), NA or empty (no reportable result)",
            "31.4"
        ),
        new("unit", Required, "the unit of the protocol", "s"),
        new(
            "run",
            Optional,
            "code of the run, by which controls are found; without it no control shows that the run was in range",
            "2026-03-02-6H"
        ),
        new("instrument", Optional, "an instrument of study.toml", "AN1"),
        new("lot", Optional, "a lot of study.toml", "R-1"),
        new("calibration", Optional, "code of the calibration", "C-2"),
        new("operator", Optional, "a person of study.toml", "LS1"),
        new("flag", Optional, "flag of the instrument, in its words", "E12"),
        new("remark", Optional, "anything else", "second aspiration"),
    ];

    public static readonly ImmutableArray<ColumnNote> Controls =
    [
        new("control", Required, "code of the control", "QC-1"),
        new("analyte", Required, "an analyte of the protocol", "aPTT"),
        new("run", Required, "the run in which it was tested, as in results.csv", "2026-03-02-6H"),
        new("tested_at", Required, "when it was tested", Time),
        new("result", Required, "as in results.csv", "29.9"),
        new("unit", Required, "the unit of the protocol", "s"),
        new(
            "target",
            Depends,
            "its target; for a qualitative test the class that it should give, needed for a control",
            "30.0"
        ),
        new(
            "allowed_low",
            Depends,
            "lowest result in range; needed for a control of a quantity",
            "28.1"
        ),
        new(
            "allowed_high",
            Depends,
            "highest result in range; needed for a control of a quantity",
            "31.9"
        ),
        new(
            "kind",
            Optional,
            "control (when empty), or bridging plasma: the same plasma in every run, whose shift shows what runs add",
            "control"
        ),
    ];

    public static readonly ImmutableArray<ColumnNote> Pairs =
    [
        new("specimen", Required, "study code of the specimen, never a patient's number", "N-017"),
        new("subject", Optional, "study code of the person; the specimen's when empty", "S017"),
        new("group", Depends, "a group of the protocol; may be empty where there is one", "none"),
        new(
            "storage",
            Depends,
            "a storage of the protocol; may be empty where there is one",
            "wb-rt"
        ),
        new(
            "analyte",
            Depends,
            "an analyte of the protocol; may be empty where there is one",
            "PT"
        ),
        new("collected_at", Required, "when it was collected", Time),
        new("baseline_tested_at", Required, "when the baseline was tested", Time),
        new("baseline_result", Required, "as reported; words as in results.csv", "12.1"),
        new(
            "time_point",
            Depends,
            "a time point of the protocol; may be empty where there is one",
            "12 h"
        ),
        new("delayed_tested_at", Required, "when the delayed tube was tested", Time),
        new("delayed_result", Required, "as reported; words as in results.csv", "12.4"),
        new("baseline_run", Optional, "run of the baseline", "2026-03-02-BL"),
        new("delayed_run", Optional, "run of the delayed result", "2026-03-02-12H"),
        new("instrument", Optional, "an instrument of study.toml", "AN1"),
        new("lot", Optional, "a lot of study.toml", "R-1"),
        new(
            "spun_at",
            Depends,
            "when the delayed tube was spun; without it its result is left out",
            Time
        ),
        new(
            "baseline_spun_at",
            Optional,
            "when the baseline tube was spun; needed where the group limits it",
            Time
        ),
        new("fill_percent", Optional, "fill of the delayed tube, percent of nominal", "96"),
        new("baseline_fill_percent", Optional, "fill of the baseline tube", "98"),
        new("hematocrit_percent", Optional, "hematocrit, percent", "41"),
        new("clot", Optional, "no or yes, of the delayed tube", "no"),
        new("baseline_clot", Optional, "no or yes, of the baseline tube", "no"),
        new("hemolysis", Optional, "none, slight, moderate or gross, of the delayed tube", "none"),
        new("baseline_hemolysis", Optional, "the same of the baseline tube", "none"),
        new("origin", Optional, "native, spiked or pool", "native"),
        new("unit", Optional, "the unit of the protocol; that one when empty", "s"),
    ];
}

/// <summary>What a column is for.</summary>
internal sealed record ColumnNote(string Path, Need Need, string Meaning, string Example);
