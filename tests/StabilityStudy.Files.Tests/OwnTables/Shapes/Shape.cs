using StabilityStudy.Files.Tests.Messages;

namespace StabilityStudy.Files.Tests.OwnTables.Shapes;

/// <summary>A table as a laboratory's system lays it out, whatever its dialect.</summary>
/// <param name="Name">What is special about it.</param>
/// <param name="Lines">Its lines: texts, results and times.</param>
/// <param name="Settings">What study.toml states of it, below the keys of its dialect.</param>
internal sealed record Shape(string Name, ImmutableArray<object[]> Lines, string Settings)
{
    /// <summary>Keys beside those of the dialect.</summary>
    public string Keys { get; init; } = "";

    /// <summary>Whether a row is a pair, so that tubes are named by their time points.</summary>
    public bool IsOfPairs { get; init; }

    /// <summary>The lines of a second file; none for most.</summary>
    public ImmutableArray<object[]> More { get; init; } = [];

    /// <summary>The table of [read] that describes it.</summary>
    public string Section => IsOfPairs ? "pairs" : "results";

    /// <summary>A result as a system reports it.</summary>
    public sealed record Result(string Text);

    private static readonly string[] s_hours = ["0 h", "6 h", "8 h"];

    private const string OfTubes = """
        columns = { tube = "Sample", analyte = "Test", result = "Result", unit = "Unit", tested_at = "Tested" }

        """;

    private const string Pattern =
        "tube_pattern = \"{specimen}-{tube}\"\ntime_point_of_tube = { A = \"baseline\", B = \"6 h\", C = \"8 h\" }\n";

    /// <summary>The data in every shape.</summary>
    public static ImmutableArray<Shape> All(ShapedData data) =>
        [
            ARowAResult(data),
            Blocks(data),
            TwoFiles(data),
            BesideTheTable(data),
            AColumnATimePoint(data),
            AColumnAnAnalyte(data),
            AColumnBoth(data),
            TitlesOverColumns(data),
            ARowAPair(data),
        ];

    private static Shape ARowAResult(ShapedData data) =>
        new("a row a result", [Header, .. Rows(data.Tubes)], OfTubes) { Keys = Pattern };

    private static Shape Blocks(ShapedData data) =>
        new(
            "blocks under a repeated header",
            [
                Header,
                .. Rows(data.Tubes[..9]),
                [],
                ["Second block"],
                Header,
                .. Rows(data.Tubes[9..]),
            ],
            OfTubes
        )
        {
            Keys = Pattern + "header_repeats = true\n",
        };

    private static Shape TwoFiles(ShapedData data) =>
        new("two files", [Header, .. Rows(data.Tubes[..10])], OfTubes)
        {
            Keys = Pattern,
            More = [Header, .. Rows(data.Tubes[10..])],
        };

    private static Shape BesideTheTable(ShapedData data) =>
        new(
            "a preamble, a line of units and a footer",
            [
                ["Export of an invented study"],
                ["Serial", "0001"],
                ["Sample", "Test", "Result", "Tested"],
                ["", "", "sec", ""],
                .. Rows(data.Tubes).Select(row => new[] { row[0], row[1], row[2], row[4] }),
                ["48 rows exported"],
            ],
            """
            columns = { tube = "Sample", analyte = "Test", result = "Result", tested_at = "Tested" }
            values = { unit = { "sec" = "s" } }

            """
        )
        {
            Keys = Pattern + "header_line = 3\nfooter_lines = 1\nunits = \"in the line below\"\n",
        };

    private static Shape AColumnATimePoint(ShapedData data) =>
        new(
            "a column a time point",
            [
                [
                    "Specimen",
                    "Test",
                    .. s_hours.SelectMany(hour => new[] { hour + " (s)", "Time " + hour }),
                ],
                .. data.Specimens.SelectMany(tubes =>
                    ShapedData.Analytes.Select(
                        (analyte, i) =>
                            (object[])
                                [
                                    tubes[0].Specimen,
                                    analyte,
                                    .. tubes.SelectMany(tube =>
                                        new object[] { new Result(tube.Results[i]), tube.Tested }
                                    ),
                                ]
                    )
                ),
            ],
            "columns = { specimen = \"Specimen\", analyte = \"Test\" }\n"
                + Wide(
                    (hour, _) => $"result = \"{hour} (s)\", tested_at = \"Time {hour}\"",
                    hasAnalyte: false
                )
        )
        {
            Keys = "units = \"in the header\"\n",
        };

    private static Shape AColumnAnAnalyte(ShapedData data) =>
        new(
            "a column an analyte",
            [
                ["Sample", "aPTT (s)", "PT (s)", "Tested"],
                .. data.Tubes.Select(tube =>
                    (object[])
                        [
                            $"{tube.Specimen}-{tube.Letter}",
                            .. tube.Results.Select(text => new Result(text)),
                            tube.Tested,
                        ]
                ),
            ],
            """
            columns = { tube = "Sample", tested_at = "Tested" }
            [[read.results.wide]]
            columns = { result = "aPTT (s)" }
            constants = { analyte = "aPTT" }
            [[read.results.wide]]
            columns = { result = "PT (s)" }
            constants = { analyte = "PT" }

            """
        )
        {
            Keys = Pattern + "units = \"in the header\"\n",
        };

    private static Shape AColumnBoth(ShapedData data) =>
        new(
            "a column an analyte and time point",
            [
                [
                    "Specimen",
                    .. s_hours.SelectMany(hour =>
                        ShapedData
                            .Analytes.Select(analyte => $"{analyte} {hour} (s)")
                            .Append("Time " + hour)
                    ),
                ],
                .. data.Specimens.Select(OfSpecimen),
            ],
            "columns = { specimen = \"Specimen\" }\n"
                + Wide(
                    (hour, analyte) =>
                        $"result = \"{analyte} {hour} (s)\", tested_at = \"Time {hour}\"",
                    hasAnalyte: true
                )
        )
        {
            Keys = "units = \"in the header\"\n",
        };

    private static Shape TitlesOverColumns(ShapedData data) =>
        new(
            "a header of two lines with titles over columns",
            [
                ["Specimen", "0 h", "", "", "6 h", "", "", "8 h", "", ""],
                [
                    "",
                    .. Enumerable
                        .Repeat(new[] { "aPTT (s)", "PT (s)", "Time" }, 3)
                        .SelectMany(names => names),
                ],
                .. data.Specimens.Select(OfSpecimen),
            ],
            "columns = { specimen = \"Specimen\" }\n"
                + Wide(
                    (hour, analyte) =>
                        $"result = \"{hour} {analyte} (s)\", tested_at = \"{hour} Time\"",
                    hasAnalyte: true
                )
        )
        {
            Keys = "header_rows = 2\nunits = \"in the header\"\n",
        };

    private static Shape ARowAPair(ShapedData data) =>
        new(
            "a row a pair",
            [
                [
                    "Specimen",
                    "Collected",
                    "Test",
                    "Delay",
                    "First",
                    "First time",
                    "First spun",
                    "Second",
                    "Second time",
                    "Second spun",
                ],
                .. data.Specimens.SelectMany(tubes =>
                    from tube in tubes.Skip(1)
                    from i in Enumerable.Range(0, ShapedData.Analytes.Length)
                    select (object[])
                        [
                            tube.Specimen,
                            tube.Collected,
                            ShapedData.Analytes[i],
                            tube.Occasion,
                            new Result(tubes[0].Results[i]),
                            tubes[0].Tested,
                            tubes[0].Spun,
                            new Result(tube.Results[i]),
                            tube.Tested,
                            tube.Spun,
                        ]
                ),
            ],
            """
            columns = { specimen = "Specimen", collected_at = "Collected", analyte = "Test", time_point = "Delay", baseline_result = "First", baseline_tested_at = "First time", baseline_spun_at = "First spun", delayed_result = "Second", delayed_tested_at = "Second time", spun_at = "Second spun" }
            constants = { unit = "s" }

            """
        )
        {
            IsOfPairs = true,
        };

    private static object[] Header => ["Sample", "Test", "Result", "Unit", "Tested"];

    private static IEnumerable<object[]> Rows(IEnumerable<ShapedData.Tube> tubes) =>
        tubes.SelectMany(tube =>
            ShapedData.Analytes.Select(
                (analyte, i) =>
                    (object[])
                        [
                            $"{tube.Specimen}-{tube.Letter}",
                            analyte,
                            new Result(tube.Results[i]),
                            "s",
                            tube.Tested,
                        ]
            )
        );

    private static object[] OfSpecimen(ImmutableArray<ShapedData.Tube> tubes) =>
        [
            tubes[0].Specimen,
            .. tubes.SelectMany(tube =>
                tube.Results.Select(text => (object)new Result(text)).Append(tube.Tested)
            ),
        ];

    private static string Wide(Func<string, string, string> columns, bool hasAnalyte) =>
        string.Concat(
            from place in Enumerable.Range(0, s_hours.Length)
            from analyte in hasAnalyte ? ShapedData.Analytes : [""]
            select $"[[read.results.wide]]\ncolumns = {{ {columns(s_hours[place], analyte)} }}\nconstants = {{ {(hasAnalyte ? $"analyte = \"{analyte}\", " : "")}time_point = \"{ShapedData.Occasions[place]}\", tube = \"{"ABC"[place]}\" }}\n"
        );
}
