using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Tests;

/// <summary>Broken data files.</summary>
internal static class BrokenCsvCases
{
    private const string T = "specimens.csv";
    private const string R = "results.csv";
    private const string C = "controls.csv";

    public static IEnumerable<BrokenInput> All => [.. Form, .. Values, .. Rows, .. Controls];

    private static IEnumerable<BrokenInput> Controls =>
        [
            new(C, ",run,", ",series,", "missing-column", "run", "Add the column")
            {
                Along = ["column-not-used"],
            },
            new(C, "N1,aPTT,R1", "N1,aPPT,R1", "unknown-reference", "analyte", "aPTT"),
            new(C, "N1,aPTT,R1", "N1,aPTT,R", "control-run-unknown", "run", "\"R1\"")
            {
                Severity = Severity.Attention,
            },
            new(C, "N1,aPTT,R1", "N1,aPTT,", "missing-value", "run", "Fill in"),
            new(C, "N1,aPTT,R1", "N1,aPTT,=R1", "looks-like-formula", "run", "letter or a digit"),
            new(C, "N1,aPTT,R1", "N1,aPTT,-R1", "looks-like-formula", "run", "letter or a digit"),
            new(C, "N1,aPTT,R1", "N1,aPTT,\u202ER1", "control-character", "run", "again"),
            new(C, "30.1,s", "30.1,sec", "other-unit", "unit", "not converted"),
            new(C, "30.1,s", "\"30,1\",s", "unknown-result", "result", "point"),
            new(C, "30.1,s", "30,1,s", "decimal-comma", "result", "Write 30.1"),
            new(C, "28,32.0", "32.5,32.0", "control-range-reversed", "allowed_low", "Correct"),
            new(C, "28,32.0", ",32.0", "control-without-range", "allowed_low", "Fill in"),
            new(C, "28,32.0", "28,", "control-without-range", "allowed_high", "bridging plasma"),
            new(C, "bridging plasma", "bridging plasm", "unknown-word", "kind", "bridging plasma"),
            new(
                C,
                "N1,aPTT,R2",
                "N1,aPTT,R1,2026-03-02T07:40,30.1,s,30.0,28,32.0,control\nN1,aPTT,R2",
                "duplicate-row",
                null,
                "line 2"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                C,
                "N1,aPTT,R2",
                "N1,aPTT,R1,2026-03-02T07:40,30.2,s,30.0,28,32.0,control\nN1,aPTT,R2",
                "conflicting-rows",
                null,
                "line 2"
            ),
        ];

    private static IEnumerable<BrokenInput> Form =>
        [
            new(R, GoodStudy.Results, "", "empty-file", null, "Begin the file")
            {
                WholeFile = true,
            },
            new(
                R,
                GoodStudy.Results[
                    (GoodStudy.Results.IndexOf('\n', StringComparison.Ordinal) + 1)..
                ],
                "",
                "no-data-yet",
                null,
                "Collect data"
            )
            {
                WholeFile = true,
            },
            new(
                R,
                ",tested_at,result",
                ",tested,result",
                "missing-column",
                "tested_at",
                "Add the column"
            )
            {
                Along = ["column-misspelt", "column-not-used"],
            },
            new(
                R,
                "tested_at,result,unit",
                "tested_at,result,result",
                "duplicate-column",
                "result",
                "Rename"
            )
            {
                Along = ["missing-column"],
            },
            new(
                R,
                ",flag,remark",
                ",flag,remrak",
                "column-misspelt",
                "remrak",
                "Rename it to \"remark\""
            )
            {
                Severity = Severity.Attention,
            },
            new(
                R,
                ",flag,remark",
                ",flag,batch number",
                "column-not-used",
                "batch number",
                "Nothing"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                R,
                ",flag,remark",
                ",flag,Patient name",
                "personal-column",
                "Patient name",
                "[read.results.columns]"
            ),
            new(R, "31.2,s,R1", "31.2,s,\"R1", "csv-quotes", null, "Close the quotes")
            {
                Along = ["tube-without-results"],
            },
            new(R, "31.2,s,R1", "31.2,s,R\"1", "csv-quotes", null, "twice"),
            new(R, "31.2,s,R1", "31.2,s,\"R\"1", "csv-quotes", null, "closing quote"),
            new(R, ",P1,,\nS-001,B", ",P1,,,\nS-001,B", "csv-field-count", null, "16 fields"),
            new(R, "31.2,s,R1", "31,2,s,R1", "decimal-comma", "result", "Write 31.2"),
            new(R, ">180,s", ">180,5,s", "decimal-comma", "result", "Write >180.5"),
            new(T, "97,5,41.5,", "97,5,41,5,", "decimal-comma", "hematocrit_percent", "41.5"),
            new(
                R,
                GoodStudy.Results,
                GoodStudy.Results.Replace(',', ';'),
                "other-delimiter",
                null,
                "delimiter = \";\" under [read.results]"
            ),
            new(
                T,
                GoodStudy.Specimens,
                GoodStudy.Specimens.Replace(',', '\t'),
                "other-delimiter",
                null,
                "tabs"
            ),
            new(R, "31.2,s,R1,", "31.2,s,", "csv-field-count", null, "14 fields"),
            new(
                R,
                "\"above, the limit\"",
                new string('x', 70_000),
                "record-too-long",
                null,
                "unclosed"
            ),
            new(
                T,
                ",\"needle, \"\"short\"\"\",",
                ",\u0001,",
                "control-character",
                "device",
                "Type the text again"
            ),
            new(
                R,
                "S-001,B,aPTT",
                "S-001,B\u00a0,aPTT",
                "surrounding-space",
                "tube",
                "Remove the space"
            ),
        ];

    private static IEnumerable<BrokenInput> Values =>
        [
            new(R, "31.2", "31.2 ", "surrounding-space", "result", "Remove the space"),
            new(R, "31.2", "\"31,2\"", "unknown-result", "result", "decimal sign as a point"),
            new(R, "31.2", "NaN", "unknown-result", "result", "CLOT"),
            new(R, "31.2", "1e999", "unknown-result", "result", "no exponent"),
            new(R, "31.2", "1 000", "unknown-result", "result", "without spaces"),
            new(R, "31.2", "+5", "unknown-result", "result", "without the plus sign"),
            new(R, "31.2", "３１", "unknown-result", "result", "0 to 9"),
            new(R, "31.2", "31.", "unknown-result", "result", "plain digits"),
            new(R, "31.2", "999999999", "unknown-result", "result", "900 million"),
            new(R, "31.2", "clott", "unknown-result", "result", "perhaps CLOT"),
            new(R, ">180", ">=180", "unknown-result", "result", "After the sign"),
            new(R, "31.2", "31.24", "more-decimals", "result", "decimals in the protocol")
            {
                Severity = Severity.Note,
            },
            new(R, "31.2,s", "31.2,sec", "other-unit", "unit", "not converted"),
            new(R, "31.2,s", "31.2,", "missing-value", "unit", "Fill in \"unit\""),
            new(
                R,
                "baseline",
                "Baseline",
                "unknown-time-point",
                "time_point",
                "Did you mean \"baseline\""
            ),
            new(R, "6 h", "7 h", "unknown-time-point", "time_point", "\"6 h\""),
            new(
                R,
                "S-001,A,aPTT",
                "S-001,A,APTT",
                "unknown-reference",
                "analyte",
                "Did you mean \"aPTT\""
            ),
            new(R, "R1,A1,L1", "R1,A2,L1", "unknown-reference", "instrument", "study.toml"),
            new(R, "R1,A1,L1", "R1,A1,L2", "unknown-reference", "lot", "study.toml"),
            new(R, "C1,P1,,", "C1,P9,,", "unknown-reference", "operator", "Did you mean \"P1\""),
            new(R, "baseline,1,", "baseline,0,", "out-of-range", "replicate", "1"),
            new(R, "baseline,1,", "baseline,one,", "not-a-number", "replicate", "Write digits"),
            new(R, "2026-03-02T07:50", "", "missing-value", "tested_at", "Fill in"),
            new(
                R,
                "2026-03-02T07:50",
                "2026-03-02 07:50",
                "not-a-time",
                "tested_at",
                "2026-02-28T14:05"
            ),
            new(R, "2026-03-02T07:50", "02.03.2026", "not-a-time", "tested_at", "offset"),
            new(R, "2026-03-02T07:50", "31/02/2026", "not-a-time", "tested_at", "2026-02-28T14:05"),
            new(R, "2026-03-02T07:50", "2026-02-30T07:50", "not-a-time", "tested_at", "calendar"),
            new(R, "2026-03-02T07:50", "2026-03-02T24:00", "not-a-time", "tested_at", "clock"),
            new(
                R,
                "2026-03-02T07:50",
                "2026-03-02T07:50+25:00",
                "not-a-time",
                "tested_at",
                "offset"
            ),
            new(T, "X-01,none", "X-01,nnoe", "unknown-reference", "group", "Did you mean \"none\""),
            new(
                T,
                "none,wb-rt",
                "none,wb-rt2",
                "unknown-reference",
                "storage",
                "Did you mean \"wb-rt\""
            ),
            new(
                T,
                "2026-03-02T07:00",
                "1999-03-02T07:00",
                "time-too-early",
                "collected_at",
                "Correct the date"
            ),
            new(
                T,
                "2026-03-02T07:00",
                "2026-03-29T02:30",
                "time-does-not-exist",
                "collected_at",
                "true time"
            ),
            new(
                T,
                "2026-03-02T07:00",
                "2025-10-26T02:30",
                "time-exists-twice",
                "collected_at",
                "2025-10-26T02:30:00+02:00"
            ),
            new(T, "95.0", "250", "out-of-range", "fill_percent", "from 0 to 120"),
            new(T, "95.0", "95%", "not-a-number", "fill_percent", "no unit"),
            new(T, ",none,no,", ",trace,no,", "unknown-word", "hemolysis", "slight"),
            new(T, ",none,no,", ",none,No,", "unknown-word", "clot", "\"no\""),
            new(T, ",native", ",patient", "unknown-word", "origin", "spiked"),
            new(T, "S-001,A,X-01", ",A,X-01", "missing-value", "specimen", "Fill in")
            {
                Along = ["unknown-tube"],
            },
        ];

    private static IEnumerable<BrokenInput> Rows =>
        [
            new(
                T,
                "S-001,A,X-01",
                "S-001,A,1961-04-23",
                "looks-like-identity",
                "subject",
                "birth date"
            ),
            new(
                T,
                "S-001,A,X-01",
                "S-001,A,23.04.1961",
                "looks-like-identity",
                "subject",
                "birth date"
            ),
            new(
                T,
                "S-001,A,X-01",
                "S-001,A,\"Smith, John\"",
                "looks-like-identity",
                "subject",
                "a name"
            ),
            new(
                T,
                "S-001,A,X-01",
                "S-001,A,John Smith",
                "looks-like-identity",
                "subject",
                "a name"
            ),
            new(
                T,
                "S-001,A,X-01",
                "S-001,A,MRN0123456",
                "looks-like-identity",
                "subject",
                "record number"
            ),
            .. new[]
            {
                "0049 171 5550123",
                "0171 5550123",
                "(555) 555-0123",
                "555-555-0123",
                "01 55 50 12 34",
            }.Select(telephone => new BrokenInput(
                T,
                "S-001,A,X-01",
                $"S-001,A,{telephone}",
                "looks-like-identity",
                "subject",
                "telephone number"
            )),
            new(
                T,
                "S-001,A,X-01",
                "S-001,A,erika@example.org",
                "looks-like-identity",
                "subject",
                "e-mail address"
            ),
            new(T, "S-001,B,X-01", "S-001,B,X-03", "tubes-disagree", "subject", "line 2"),
            new(T, "S-001,B,", "S-001,A,", "duplicate-tube", "tube", "line 2")
            {
                Along = ["unknown-tube"],
            },
            new(R, "S-001,B,aPTT", "S-001,C,aPTT", "unknown-tube", "tube", "Add the tube")
            {
                Along = ["tube-without-results"],
            },
            new(R, "S-001,B,aPTT", "S-009,B,aPTT", "unknown-tube", "specimen", "no specimen")
            {
                Along = ["tube-without-results"],
            },
            new(
                R,
                "S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,\n",
                "",
                "tube-without-results",
                "tube",
                "NT"
            )
            {
                OtherFile = "specimens.csv",
                Severity = Severity.Note,
                Along = ["control-run-unknown"],
            },
            new(
                R,
                "S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,\n",
                "S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,\nS-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,\n",
                "duplicate-row",
                null,
                "Remove one"
            )
            {
                Severity = Severity.Attention,
                LinesBelow = 1,
            },
            new(
                R,
                "S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,\n",
                "S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,\nS-001,B,aPTT,6 h,1,2026-03-02T13:05,32.50,s,R2,A1,L1,C1,P1,,\n",
                "conflicting-rows",
                null,
                "lines 3 and 4"
            )
            {
                LinesBelow = 1,
                Along = ["more-decimals"],
            },
            new(
                R,
                "2026-03-02T07:50",
                "2026-03-02T06:50",
                "times-out-of-order",
                "tested_at",
                "collected_at"
            ),
            new(
                R,
                "2026-03-02T07:50",
                "2026-03-02T07:29",
                "times-out-of-order",
                "tested_at",
                "spun_at"
            ),
            new(
                R,
                "2026-03-02T07:50",
                "2027-05-02T07:50",
                "times-too-far-apart",
                "tested_at",
                "days after"
            )
            {
                Along = ["lot-expired"],
            },
            new(
                T,
                "2026-03-02T07:30",
                "2026-03-02T06:30",
                "times-out-of-order",
                "spun_at",
                "collected_at"
            ),
            new(
                T,
                "2026-03-02T07:20",
                "2026-03-02T06:59",
                "times-out-of-order",
                "received_at",
                "collected_at"
            ),
            new(
                T,
                "2026-03-02T07:30,,,,",
                "2026-03-02T07:30,2026-03-02T07:29,,,",
                "times-out-of-order",
                "separated_at",
                "spun_at"
            ),
        ];
}
