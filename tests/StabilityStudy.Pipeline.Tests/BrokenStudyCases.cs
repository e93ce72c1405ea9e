using static StabilityStudy.Pipeline.Tests.Studies.ExampleStudy;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>Faults as people make them, one at a time.</summary>
internal static class BrokenStudyCases
{
    private const string FirstTube = "N-001,N-001-A,S001,none,wb-rt,2,2026-03-02T07:05:00-05:00";
    private const string FirstResult = "N-001-A,aPTT,baseline,1,2026-03-02T07:30:00-05:00,32.1,s";
    private const string SecondRow =
        "N-001,N-001-B,aPTT,6 h,1,2026-03-02T13:10:00-05:00,33.2,s,2026-03-02-6H,AN1,R-2601,,LS1,,\n";

    public static BrokenStudy[] All { get; } =
    [
        new("toml-syntax", Protocol, "minimum_days = 5", "minimum_days 5"),
        new("duplicate-key", Protocol, "minimum_days = 5", "minimum_days = 5\nminimum_days = 6")
        {
            LinesBelow = 1,
        },
        new("unknown-key", Protocol, "minimum_days = 5", "minimum_days = 5\nminimum_day = 6")
        {
            LinesBelow = 1,
        },
        new("missing-key", Protocol, "baseline_within = \"30 min\"\n", "") { WholeFile = true },
        new("wrong-type", Protocol, "minimum_days = 5", "minimum_days = \"five\""),
        new("empty-text", Protocol, "version = \"1\"", "version = \"\""),
        new(
            "empty-list",
            Protocol,
            "time_points = [\"6 h\", \"8 h\", \"12 h\"]",
            "time_points = []"
        ),
        new("unknown-word", Protocol, "cap = \"closed\"", "cap = \"shut\""),
        new("out-of-range", Protocol, "confidence = 0.90", "confidence = 90"),
        new("not-a-duration", Protocol, "window_step = \"30 min\"", "window_step = \"half\""),
        new("unsupported-format", Protocol, "format = 1", "format = 9"),
        new("unfit-code", Protocol, "code = \"WB-RT-APTT\"", "code = \"WB/RT\""),
        new("duplicate-id", Protocol, "{ id = \"ufh\"", "{ id = \"none\""),
        new("unknown-reference", Protocol, "aPTT = \"aptt-bias\"", "aPTT = \"aptt-mean\""),
        new("time-points-order", Protocol, "\"8 h\", \"12 h\"]", "\"12 h\", \"8 h\"]"),
        new(
            "baseline-too-late",
            Protocol,
            "baseline_within = \"30 min\"",
            "baseline_within = \"7 h\""
        ),
        new("limit-without-amount", Protocol, "\npercent = 7.5", "\n") { LinesBelow = -2 },
        new("limit-does-not-fit-scale", Protocol, "scale = \"percent\"", "scale = \"absolute\""),
        new(
            "tube-plan-does-not-fit",
            Protocol,
            "tube_plan = \"a tube per time point\"",
            "tube_plan = \"one tube retested\""
        )
        {
            Place = "state = \"whole blood\"",
        },
        new("few-days", Protocol, "minimum_days = 5", "minimum_days = 3") { GoesOn = true },
        new("not-a-date", Facts, "expires = \"2027-01-31\"", "expires = \"2027-02-30\""),
        new("unknown-time-zone", Facts, "America/New_York", "America/Old_York"),
        new("not-a-plain-name", Facts, "\"specimens.csv\"", "\"../specimens.csv\""),
        new("missing-file", Facts, "\"specimens.csv\"", "\"tubes.csv\"")
        {
            QueryFile = "tubes.csv",
        },
        new("unknown-reference", Facts, "by = \"LS1\"", "by = \"LS9\""),
        new("lot-expired", Facts, "expires = \"2027-01-31\"", "expires = \"2026-03-01\"")
        {
            QueryFile = Results,
            QueryLine = 2,
            GoesOn = true,
        },
        new("missing-column", Specimens, "specimen,tube,subject", "specimen,tube,patient"),
        new("duplicate-column", Specimens, "draw_position,collected_at", "spun_at,collected_at"),
        new("missing-value", Specimens, FirstTube, FirstTube.Replace("S001", "")),
        new("surrounding-space", Specimens, FirstTube, FirstTube.Replace("S001", " S001")),
        new("looks-like-identity", Specimens, FirstTube, FirstTube.Replace("S001", "1961-04-23")),
        new("unknown-reference", Specimens, FirstTube, FirstTube.Replace("none", "warfarin")),
        new("not-a-time", Specimens, FirstTube, FirstTube.Replace("T07:05", " 7.05")),
        new(
            "time-does-not-exist",
            Specimens,
            FirstTube,
            FirstTube.Replace("2026-03-02T07:05:00-05:00", "2026-03-08T02:30:00")
        ),
        new(
            "time-exists-twice",
            Specimens,
            FirstTube,
            FirstTube.Replace("2026-03-02T07:05:00-05:00", "2025-11-02T01:30:00")
        ),
        new("time-too-early", Specimens, FirstTube, FirstTube.Replace("2026-", "1926-")),
        new("times-out-of-order", Specimens, FirstTube, FirstTube.Replace("T07:05", "T09:05")),
        new("tubes-disagree", Specimens, "N-001-B,S001", "N-001-B,S002"),
        new("duplicate-tube", Specimens, "N-001,N-001-B,", "N-001,N-001-A,"),
        new("not-a-number", Specimens, ",96,6,37,none,", ",96 %,6,37,none,"),
        new("unknown-result", Results, FirstResult, FirstResult.Replace("32.1", "3x.1")),
        new("unknown-result", Results, FirstResult, FirstResult.Replace("32.1", "\"32,1\"")),
        new("other-unit", Results, FirstResult, FirstResult.Replace(",s", ",ratio")),
        new("unknown-time-point", Results, "N-001-B,aPTT,6 h", "N-001-B,aPTT,7 h"),
        new("unknown-tube", Results, "N-001-B,aPTT", "N-001-Z,aPTT"),
        new("decimal-comma", Results, FirstResult, FirstResult.Replace("32.1", "32,1")),
        new("csv-quotes", Results, FirstResult, FirstResult.Replace("32.1", "3\"2.1")),
        new("conflicting-rows", Results, SecondRow, SecondRow + SecondRow.Replace("33.2", "34.2"))
        {
            LinesBelow = 1,
        },
        new("duplicate-row", Results, SecondRow, SecondRow + SecondRow)
        {
            LinesBelow = 1,
            GoesOn = true,
        },
        new("more-decimals", Results, FirstResult, FirstResult.Replace("32.1", "32.13"))
        {
            GoesOn = true,
        },
        new("tube-without-results", Results, SecondRow, "")
        {
            QueryFile = Specimens,
            QueryLine = 3,
            GoesOn = true,
        },
        new("delayed-tube-failed", Results, ",33.2,s,", ",NA,s,") { GoesOn = true },
        new("no-delayed-result", Results, ",33.2,s,", ",QNS,s,") { GoesOn = true },
        new("left-measuring-interval", Results, ",33.2,s,", ",>180,s,") { GoesOn = true },
        new("left-measuring-interval", Results, ",33.2,s,", ",180.1,s,") { GoesOn = true },
        new("beyond-measuring-interval", Results, ",33.2,s,", ",>34,s,") { GoesOn = true },
        new("outside-timing", Results, "2026-03-02T13:10", "2026-03-02T13:04") { GoesOn = true },
        new("outside-timing", Results, "2026-03-02T13:10", "2026-03-02T13:36") { GoesOn = true },
        new("baseline-invalid", Results, "2026-03-02T07:30", "2026-03-02T07:36")
        {
            LinesBelow = 1,
            GoesOn = true,
        },
    ];
}
