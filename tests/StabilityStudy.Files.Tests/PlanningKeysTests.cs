using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Tests;

/// <summary>Keys that plan or document a study, and those of one-way changes of side.</summary>
public sealed class PlanningKeysTests
{
    private const string Sides = """

        [[criterion]]
        id = "sides"
        kind = "reclassification"
        analytes = ["aPTT"]
        levels = [60.0]
        share_percent_max = 15
        confidence = 0.95
        direction = "down"
        levels_together = true
        near = { range = [60.0, 90.0], specimens_min = 40 }

        """;

    private static StudyProtocol Read(string protocol)
    {
        var outcome = ProtocolReader.Read(
            System.Text.Encoding.UTF8.GetBytes(protocol),
            "protocol.toml"
        );
        Assert.True(outcome.TryGet(out var read), string.Join('\n', outcome.Queries));
        return read;
    }

    private static string With(string from, string to)
    {
        Assert.Contains(from, GoodStudy.Protocol, StringComparison.Ordinal);
        return GoodStudy.Protocol.Replace(from, to, StringComparison.Ordinal);
    }

    private static string[] Codes(string protocol) =>
        [
            .. ProtocolReader
                .Read(System.Text.Encoding.UTF8.GetBytes(protocol), "protocol.toml")
                .Queries.Select(query => query.Code),
        ];

    [Fact]
    public void A_rule_is_that_of_group_and_storage_before_that_of_the_group()
    {
        var analyte = Read(
            With(
                "decimals = 1",
                "decimals = 1\ngroup_windows = [{ group = \"none\", time = \"2 h\", as_plasma = \"3 h\", source = \"common practice\" }, { group = \"none\", storage = \"wb-rt\", time = \"150 min\", as_plasma = \"5 h\", source = \"common practice\" }]"
            )
        ).Analytes[0];

        Assert.Equal(TimeSpan.FromMinutes(150), analyte.StandardWindowOf("none", "wb-rt").Time);
        Assert.Equal(TimeSpan.FromHours(5), analyte.StandardWindowOf("none", "wb-rt").AsPlasma);
        Assert.Equal(TimeSpan.FromHours(2), analyte.StandardWindowOf("none", "other").Time);
        Assert.Equal(TimeSpan.FromHours(3), analyte.StandardWindowOf("none", "other").AsPlasma);
        Assert.Equal(analyte.StandardWindow, analyte.StandardWindowOf("ufh", "wb-rt"));
        Assert.Null(analyte.StandardWindow.AsPlasma);
    }

    [Fact]
    public void What_the_bench_needs_from_spin_to_test_is_read()
    {
        var storage = Read(
            With("spin_to_test = \"1 h\"", "spin_to_test = \"1 h\", spin_takes = \"40 min\"")
        ).Storages[0];

        Assert.Equal(TimeSpan.FromMinutes(40), storage.SpinTakes);
        Assert.Null(Read(GoodStudy.Protocol).Storages[0].SpinTakes);
    }

    [Fact]
    public void Without_them_a_protocol_is_as_it_was()
    {
        var protocol = Read(GoodStudy.Protocol);

        Assert.Null(protocol.PlannedDays);
        Assert.Null(protocol.ReviewAfter);
        Assert.Equal(TimeOrigin.Collection, protocol.TimeOrigin);
        Assert.Empty(protocol.Tolerance.Later);
        Assert.Null(protocol.Storages[0].Transport);
        Assert.Empty(protocol.Limits[0].Alternatives);
        Assert.Empty(protocol.Analytes[0].OtherWindows);
        Assert.Empty(protocol.Analytes[0].ExpectedChanges);
        Assert.Empty(protocol.Analytes[0].PlannedNumbers);
    }

    [Fact]
    public void What_documents_an_analyte_and_a_limit_is_read()
    {
        var protocol = Read(
            With(
                    "decision_levels = [40.0, 60.0]",
                    """
                    decision_levels = [40.0, 60.0]
                    planned_numbers = [{ group = "none", range = [40.0, 60.0], specimens = 15 }]
                    other_windows = [
                      { name = "older practice", group = "none", time = "2 h", source = "guideline of 2008" },
                    ]
                    expected_changes = [
                      { group = "none", storage = "wb-rt", time = "6 h", percent = -4.8, specimen_sd_percent = 2, source = "a paper", criterion = "mean below 10 %", chance = "open", why = "because" },
                    ]
                    """
                )
                .Replace(
                    "percent = 7.5",
                    "percent = 7.5\nalternatives = [{ name = \"published rule\", percent = 10, source = \"authors\", why_not = \"too much\" }]",
                    StringComparison.Ordinal
                )
        );
        var analyte = protocol.Analytes[0];

        Assert.Equal([new PlannedNumber("none", 40.0m, 60.0m, 15)], analyte.PlannedNumbers);
        Assert.Equal(
            [
                new OtherWindow("older practice", new(TimeSpan.FromHours(2), "guideline of 2008"))
                {
                    Group = "none",
                },
            ],
            analyte.OtherWindows
        );
        Assert.Equal(
            [
                new ExpectedChange(
                    "none",
                    new(TimeSpan.FromHours(6)),
                    -4.8m,
                    "a paper",
                    "mean below 10 %",
                    ChanceOfSupport.Open
                )
                {
                    Storage = "wb-rt",
                    SpecimenSdPercent = 2,
                    Why = "because",
                },
            ],
            analyte.ExpectedChanges
        );
        Assert.Equal(
            [new OtherLimit("published rule", 10, null, "authors", "too much")],
            protocol.Limits[0].Alternatives
        );
    }

    [Fact]
    public void Days_tolerance_and_transport_are_read()
    {
        var protocol = Read(
            With("minimum_days = 5", "minimum_days = 5\nplanned_days = 10")
                .Replace(
                    "late = \"30 min\" }",
                    "late = \"30 min\", later = [{ from = \"8 h\", late = \"20 min\" }] }",
                    StringComparison.Ordinal
                )
                .Replace(
                    "spin_to_test = \"1 h\" }",
                    "spin_to_test = \"1 h\", transport = \"courier\" }",
                    StringComparison.Ordinal
                )
        );

        Assert.Equal(10, protocol.PlannedDays);
        Assert.Equal(
            (TimeSpan.FromMinutes(30), TimeSpan.FromMinutes(20)),
            (
                protocol.Tolerance.LateAt(protocol.TimePoints[0]),
                protocol.Tolerance.LateAt(protocol.TimePoints[1])
            )
        );
        Assert.Equal("courier", protocol.Storages[0].Transport);
    }

    [Fact]
    public void Direction_and_near_baselines_are_read()
    {
        var sides = Assert.IsType<ReclassificationCriterion>(
            Read(GoodStudy.Protocol + Sides).Criteria[^1]
        );

        Assert.Equal(SideDirection.Down, sides.Direction);
        Assert.Equal(new NearRange(60.0m, 90.0m, 40), sides.Near);
        Assert.True(sides.LevelsTogether);
    }

    /// <summary>Eighteen specimens cannot show 85 % even with none outside (exact bound), and 41 are more than the 40 of the group.</summary>
    [Theory]
    [InlineData("direction = \"down\"", "direction = \"up\"", "near-range-misplaced")]
    [InlineData("[60.0, 90.0]", "[59.9, 90.0]", "near-range-misplaced")]
    [InlineData("direction = \"down\"", "direction = \"both\"", "near-range-misplaced")]
    [InlineData("specimens_min = 40", "specimens_min = 41", "criterion-out-of-reach")]
    [InlineData("specimens_min = 40", "specimens_min = 18", "criterion-out-of-reach")]
    [InlineData("direction = \"down\"", "direction = \"downward\"", "unknown-word")]
    public void A_near_range_that_cannot_tell_is_a_query(string from, string to, string code) =>
        Assert.Contains(
            code,
            Codes(GoodStudy.Protocol + Sides.Replace(from, to, StringComparison.Ordinal))
        );

    [Theory]
    [InlineData("direction = \"down\"", "direction = \"both\"", "[50.0, 90.0]")]
    [InlineData("direction = \"down\"", "direction = \"up\"", "[40.0, 59.9]")]
    public void A_near_range_fits_its_direction(string from, string to, string range) =>
        Assert.DoesNotContain(
            "near-range-misplaced",
            Codes(
                GoodStudy.Protocol
                    + Sides
                        .Replace(from, to, StringComparison.Ordinal)
                        .Replace("[60.0, 90.0]", range, StringComparison.Ordinal)
            )
        );

    [Theory]
    [InlineData("minimum_days = 5", "minimum_days = 5\nplanned_days = 4", "out-of-range")]
    [InlineData(
        "baseline_within = \"1 h\"",
        "baseline_within = \"1 h\"\nchange_since = \"baseline\"\ntime_counts_from = \"thawing\"",
        "time-origin-does-not-fit"
    )]
    [InlineData(
        "baseline_within = \"1 h\"",
        "baseline_within = \"1 h\"\ntime_counts_from = \"thawing\"",
        "time-origin-does-not-fit"
    )]
    [InlineData(
        "late = \"30 min\" }",
        "late = \"30 min\", later = [{ from = \"8 h\", late = \"1 h\" }, { from = \"6 h\", late = \"1 h\" }] }",
        "time-points-order"
    )]
    [InlineData(
        "decision_levels = [40.0, 60.0]",
        "decision_levels = [40.0, 60.0]\nplanned_numbers = [{ group = \"none\", range = [40.0, 60.0], specimens = 41 }]",
        "out-of-range"
    )]
    [InlineData(
        "decision_levels = [40.0, 60.0]",
        "decision_levels = [40.0, 60.0]\nplanned_numbers = [{ group = \"some\", range = [40.0, 60.0], specimens = 4 }]",
        "unknown-reference"
    )]
    [InlineData(
        "decision_levels = [40.0, 60.0]",
        "decision_levels = [40.0, 60.0]\nexpected_changes = [{ group = \"none\", time = \"7 h\", percent = 1, source = \"a paper\", chance = \"likely\" }]",
        "unknown-reference"
    )]
    [InlineData(
        "decision_levels = [40.0, 60.0]",
        "decision_levels = [40.0, 60.0]\nother_windows = [{ name = \"other\", group = \"some\", time = \"7 h\", source = \"a paper\" }]",
        "unknown-reference"
    )]
    public void What_does_not_fit_the_protocol_is_a_query(string from, string to, string code) =>
        Assert.Contains(code, Codes(With(from, to)));

    /// <summary>A level that the criterion on changes of side leaves to the one on levels is not left out.</summary>
    [Fact]
    public void A_level_that_another_criterion_judges_is_not_left_out()
    {
        const string levels = """

            [[criterion]]
            id = "level"
            kind = "decision-level"
            limits = { aPTT = "aptt-bias" }
            confidence = 0.90

            """;

        Assert.Contains("level-not-judged", Codes(GoodStudy.Protocol + Sides));
        Assert.DoesNotContain("level-not-judged", Codes(GoodStudy.Protocol + levels + Sides));
    }
}
