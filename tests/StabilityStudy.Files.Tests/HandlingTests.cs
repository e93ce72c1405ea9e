using System.Text;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>Keys and columns of how specimens are drawn, spun, kept and thawed, of subjects and of funding.</summary>
public sealed class HandlingTests
{
    private const string Invented = "invented = true\n";
    private const string Days = "minimum_days = 5";

    private const string Facts = """
        funding = "the laboratory"
        interests = "none"
        collection_tube = { name = "2.7 mL", citrate_percent = 3.2 }
        spinning = { centrifuge = "C-2", relative_force = 1500, duration = "15 min", spins = 2, celsius = [19, 23], platelets = 6 }
        temperature = [{ storage = "wb-rt", celsius = [18, 25], device = "logger L-7" }]
        thawing = { celsius = [36.6, 37.3], duration = "5 min", device = "WB-1" }
        subjects = { source = "patients", selection = "in order", ethics = "decision 14" }

        """;

    private const string Frozen =
        "freezing = { within = \"4 h\", thaw_celsius = [36, 38], thaw_for = \"5 min\", test_within = \"1 h\", source = \"common practice\" }\n";

    private static StudyBytes Edited(StudyBytes files, string file, string from, string to)
    {
        var text = GoodStudy.Text(files, file);
        Assert.Contains(from, text, StringComparison.Ordinal);
        return files.With(file, GoodStudy.Utf8(text.Replace(from, to, StringComparison.Ordinal)));
    }

    private static StudyIntakeResult Read(StudyBytes files)
    {
        var outcome = StudyIntake.Read(files);
        Assert.True(outcome.TryGet(out var study), string.Join('\n', outcome.Queries));
        return study;
    }

    private static string[] Codes(StudyBytes files) =>
        [.. StudyIntake.Read(files).Queries.Select(query => query.Code)];

    /// <summary>Columns that only the first tube fills.</summary>
    private static StudyBytes WithColumns(string names, string values)
    {
        var lines = GoodStudy.Specimens.TrimEnd('\n').Split('\n');
        return GoodStudy.Bytes.With(
            "specimens.csv",
            GoodStudy.Utf8(
                string.Join(
                    '\n',
                    lines.Select(
                        (line, i) =>
                            line
                            + ","
                            + (
                                i switch
                                {
                                    0 => names,
                                    1 => values,
                                    _ => new string(',', names.Count(c => c == ',')),
                                }
                            )
                    )
                ) + "\n"
            )
        );
    }

    [Fact]
    public void Facts_of_the_whole_study_are_read()
    {
        var facts = Read(GoodStudy.Edited("study.toml", Invented, Facts + Invented)).Inputs.Facts;

        Assert.Equal(new CollectionTube("2.7 mL", 3.2m), facts.CollectionTube);
        Assert.Equal(
            new Spinning("C-2", 1500, TimeSpan.FromMinutes(15), 2)
            {
                Celsius = new(19, 23),
                Platelets = 6,
            },
            facts.Spinning
        );
        Assert.Equal(
            [new StorageTemperature("wb-rt", new(18, 25), "logger L-7")],
            facts.Temperatures
        );
        Assert.Equal(
            new Thawing(new(36.6m, 37.3m), TimeSpan.FromMinutes(5), "WB-1"),
            facts.Thawing
        );
        Assert.Equal(
            new SpecimenSource("patients", "in order", "decision 14"),
            facts.SpecimenSource
        );
        Assert.Equal(("the laboratory", "none"), (facts.Funding, facts.Interests));
    }

    [Fact]
    public void What_a_protocol_plans_is_read()
    {
        var protocol = Read(
            GoodStudy.Edited(
                "protocol.toml",
                Days,
                $"{HandlingCases.Draw()}\n{HandlingCases.Spin()}\n{Days}"
            )
        ).Inputs.Protocol;

        Assert.NotNull(protocol.Draw);
        Assert.Equal(["straight needle", "winged set"], protocol.Draw.Devices);
        Assert.Equal(
            ("2.7 mL", 3.2m, DiscardTubeRule.BeforeWingedSet, DrawOrder.FirstOrAfterBloodCulture),
            (
                protocol.Draw.Tube,
                protocol.Draw.CitratePercent,
                protocol.Draw.DiscardTube,
                protocol.Draw.Order
            )
        );
        Assert.Equal((3, 5), (protocol.Draw.FewestInversions, protocol.Draw.MostInversions));
        Assert.Equal(new CelsiusRange(15, 25), protocol.Draw.Transport);
        Assert.Equal(
            new SpinRules(1500, TimeSpan.FromMinutes(15), 1, "common practice")
            {
                Celsius = new(18, 25),
                PlateletsBelow = 10,
            },
            protocol.Spin
        );
        Assert.Null(protocol.Freezing);
    }

    [Fact]
    public void Without_them_a_study_is_as_it_was()
    {
        var study = Read(GoodStudy.Bytes);

        Assert.Null(study.Inputs.Protocol.Draw);
        Assert.Null(study.Inputs.Facts.SpecimenSource);
        Assert.Empty(study.Inputs.Facts.Temperatures);
        Assert.DoesNotContain(
            "discard_tube",
            Encoding.UTF8.GetString(study.Canonical.Files[0].Bytes.Span),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Columns_that_hold_nothing_leave_the_canonical_file_as_it_was() =>
        Assert.Equal(
            Encoding.UTF8.GetString(Read(GoodStudy.Bytes).Canonical.Files[0].Bytes.Span),
            Encoding.UTF8.GetString(
                Read(WithColumns("discard_tube,drawn_after,transport,material", ",,,"))
                    .Canonical.Files[0]
                    .Bytes.Span
            )
        );

    /// <summary>Only the two columns with a value are written, in their place before the source row, and read again from there.</summary>
    [Fact]
    public void The_canonical_file_has_the_columns_in_which_a_row_has_a_value()
    {
        var files = WithColumns("transport,discard_tube", "on ice,citrate");
        var study = Read(files);
        var canonical = study.Canonical.Files[0].Bytes;
        var text = Encoding.UTF8.GetString(canonical.Span);

        Assert.Contains(
            "device,origin,discard_tube,transport,source_row\n",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "straight needle,native,citrate,on ice,2\n",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("native,,,3\n", text, StringComparison.Ordinal);

        var again = StudyIntake.Read(
            study.Canonical.Files.Aggregate(files, (all, file) => all.With(file.Name, file.Bytes))
        );
        Assert.True(again.TryGet(out var read), string.Join('\n', again.Queries));
        Assert.Equal(text, Encoding.UTF8.GetString(read.Canonical.Files[0].Bytes.Span));
        Assert.Equal(
            (DiscardTube.Citrate, TransportState.OnIce, SpecimenMaterial.NotRecorded),
            (
                read.Inputs.Tubes[0].DiscardTube,
                read.Inputs.Tubes[0].Transport,
                read.Inputs.Tubes[0].Material
            )
        );

        var carried = StudyIntake.ReadCanonical(
            study.Canonical.Files.Aggregate(files, (all, file) => all.With(file.Name, file.Bytes)),
            isOfOtherVersion: false
        );
        Assert.DoesNotContain(carried.Queries, query => query.Code == "not-canonical");
    }

    [Theory]
    [InlineData("discard_tube", "EDTA")]
    [InlineData("drawn_after", "serum tube")]
    [InlineData("transport", "ice")]
    [InlineData("material", "plasma")]
    public void A_word_that_a_column_does_not_know_stops(string column, string word)
    {
        var query = Assert.Single(StudyIntake.Read(WithColumns(column, word)).Queries);

        Assert.Equal(("unknown-word", column), (query.Code, query.Source.Column));
    }

    [Theory]
    [InlineData("relative_force = 1500", "relative_force = 2000", "2000 × g, planned 1500")]
    [InlineData("duration = \"15 min\"", "duration = \"10 min\"", "10 min, planned 15 min")]
    [InlineData("spins = 2, ", "", "spun once, planned twice")]
    [InlineData("celsius = [19, 23]", "celsius = [15, 23]", "15 to 23 °C, planned 18 to 25 °C")]
    public void Spinning_otherwise_than_planned_is_a_query(string from, string to, string says)
    {
        var planned = GoodStudy.Edited(
            "protocol.toml",
            Days,
            $"{HandlingCases.Spin("celsius", "spins = 2, celsius")}\n{Days}"
        );
        var asPlanned = Edited(planned, "study.toml", Invented, Facts + Invented);

        Assert.Empty(Codes(asPlanned));
        var query = Assert.Single(
            StudyIntake.Read(Edited(asPlanned, "study.toml", from, to)).Queries
        );
        Assert.Equal(("spin-not-as-planned", "spinning"), (query.Code, query.Source.Column));
        Assert.Contains(says, query.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "celsius = [36.6, 37.3]",
        "celsius = [36.6, 39]",
        "36.6 to 39 °C, planned 36 to 38 °C"
    )]
    [InlineData("duration = \"5 min\"", "duration = \"20 min\"", "20 min, planned 5 min")]
    public void Thawing_otherwise_than_planned_is_a_query(string from, string to, string says)
    {
        var planned = Edited(
            GoodStudy.Edited("protocol.toml", Days, Frozen + Days),
            "protocol.toml",
            "state = \"whole blood\", cap = \"closed\", celsius = [18, 25], spin_to_test = \"1 h\"",
            "state = \"separated plasma\", cap = \"closed\", celsius = [-30, -18]"
        );
        planned = Edited(
            planned,
            "study.toml",
            Invented,
            Facts.Replace("[18, 25]", "[-25, -20]", StringComparison.Ordinal) + Invented
        );

        Assert.DoesNotContain("thaw-not-as-planned", Codes(planned));
        var query = Assert.Single(
            StudyIntake.Read(Edited(planned, "study.toml", from, to)).Queries,
            query => query.Code == "thaw-not-as-planned"
        );
        Assert.Contains(says, query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Citrate_that_the_protocol_plans_is_held_to_it()
    {
        var files = Edited(
            GoodStudy.Edited(
                "protocol.toml",
                Days,
                $"{HandlingCases.Draw("citrate_percent = 3.2", "citrate_percent = 3.8")}\n{Days}"
            ),
            "study.toml",
            Invented,
            Facts + Invented
        );

        var query = Assert.Single(
            StudyIntake.Read(files).Queries,
            query => query.Code == "citrate-not-as-planned"
        );
        Assert.Contains("the protocol plans 3.8 %", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_time_after_thawing_is_not_limited_where_it_is_studied()
    {
        var protocol = GoodStudy
            .Protocol.Replace(
                Days,
                Frozen + "change_since = \"baseline\"\ntime_counts_from = \"thawing\"\n" + Days,
                StringComparison.Ordinal
            )
            .Replace(
                "state = \"whole blood\"",
                "state = \"separated plasma\"",
                StringComparison.Ordinal
            );

        Assert.Contains(
            "freezing-does-not-fit",
            Codes(GoodStudy.Bytes.With("protocol.toml", GoodStudy.Utf8(protocol)))
        );
        Assert.DoesNotContain(
            "freezing-does-not-fit",
            Codes(
                GoodStudy.Bytes.With(
                    "protocol.toml",
                    GoodStudy.Utf8(
                        protocol.Replace(", test_within = \"1 h\"", "", StringComparison.Ordinal)
                    )
                )
            )
        );
    }
}
