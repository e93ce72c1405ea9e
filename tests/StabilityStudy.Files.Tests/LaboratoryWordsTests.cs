using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>Words of a protocol that only the laboratory can give: who chose a limit or a share and why, and what the wrong side of a decision level means.</summary>
public sealed class LaboratoryWordsTests
{
    private const string Levels = "decision_levels = [40.0, 60.0]\n";
    private const string Share = "share_percent_min = 85\n";

    [Fact]
    public void They_are_read()
    {
        var text = GoodStudy
            .Protocol.Replace(
                Levels,
                Levels
                    + "level_meanings = [{ level = 40, below = \"a\" }, { level = 60.0, below = \"b\", above = \"c\" }, { level = 60, group = \"none\", below = \"f\" }]\n",
                StringComparison.Ordinal
            )
            .Replace(
                "percent = 7.5\n",
                "percent = 7.5\nchosen_by = \"MD1\"\nreason = \"d\"\n",
                StringComparison.Ordinal
            )
            .Replace(
                Share,
                Share + "chosen_by = \"the board\"\nreason = \"e\"\n",
                StringComparison.Ordinal
            );
        var protocol = CanonicalTests
            .Read(GoodStudy.Bytes.With("protocol.toml", GoodStudy.Utf8(text)))
            .Inputs.Protocol;

        Assert.Equal(
            [
                new LevelMeaning(40m, null, "a", null),
                new LevelMeaning(60.0m, null, "b", "c"),
                new LevelMeaning(60m, "none", "f", null),
            ],
            protocol.Analytes[0].LevelMeanings
        );
        Assert.Equal("a", protocol.Analytes[0].MeaningOf(40.0m, "none").Below);
        Assert.Equal("f", protocol.Analytes[0].MeaningOf(60.0m, "none").Below);
        Assert.Equal("b", protocol.Analytes[0].MeaningOf(60.0m, "ufh").Below);
        Assert.Equal(new Rationale("MD1", "d"), protocol.Limits[0].Rationale);
        Assert.Equal(Rationale.NotStated, protocol.Limits[1].Rationale);
        Assert.Equal(new Rationale("the board", "e"), protocol.Criteria[1].Rationale);
    }

    [Fact]
    public void Without_them_nothing_is_stated()
    {
        var protocol = CanonicalTests.Read(GoodStudy.Bytes).Inputs.Protocol;

        Assert.Empty(protocol.Analytes[0].LevelMeanings);
        Assert.Equal(
            new LevelMeaning(60m, "none", null, null),
            protocol.Analytes[0].MeaningOf(60m, "none")
        );
        Assert.All(protocol.Limits, limit => Assert.Equal(Rationale.NotStated, limit.Rationale));
        Assert.All(
            protocol.Criteria,
            criterion => Assert.Equal(Rationale.NotStated, criterion.Rationale)
        );
    }

    [Theory]
    [InlineData(
        Levels,
        "level_meanings = [{ level = 50, below = \"a\" }]",
        "unknown-reference",
        "analyte.level_meanings",
        "known are 40, 60"
    )]
    [InlineData(
        Levels,
        "level_meanings = [{ level = 40, below = \"a\" }, { level = 40.0, above = \"b\" }]",
        "duplicate-id",
        "analyte.level_meanings",
        "each once"
    )]
    [InlineData(
        Levels,
        "level_meanings = [{ level = 40, group = \"nine\", below = \"a\" }]",
        "unknown-reference",
        "analyte.level_meanings",
        "known are none"
    )]
    [InlineData(
        Levels,
        "level_meanings = [{ level = 40 }]",
        "missing-key",
        "analyte.level_meanings.below",
        "one of them or both"
    )]
    [InlineData(
        Levels,
        "level_meanings = [{ level = 40, bellow = \"a\" }]",
        "unknown-key",
        "analyte.level_meanings.bellow",
        "spelling"
    )]
    [InlineData(
        "scale = \"percent\"\n",
        "chosen_by = \"MD1\"",
        "unknown-key",
        "criterion.chosen_by",
        "Remove it"
    )]
    [InlineData(Share, "reason = \"\"", "empty-text", "criterion.reason", "Write the text")]
    public void A_broken_word_is_a_query(
        string after,
        string added,
        string code,
        string key,
        string action
    ) =>
        Assert.Contains(
            StudyIntake
                .Read(GoodStudy.Edited("protocol.toml", after, after + added + "\n"))
                .Queries,
            query =>
                (query.Code, query.Source.Column) == (code, key)
                && query.Action.Contains(action, StringComparison.Ordinal)
        );

    [Theory]
    [InlineData(200, false)]
    [InlineData(201, true)]
    public void A_reason_has_room_for_so_many_characters(int length, bool isRefused)
    {
        var reason = $"reason = \"{new string('a', length)}\"\n";
        var queries = StudyIntake
            .Read(GoodStudy.Edited("protocol.toml", Share, Share + reason))
            .Queries;

        Assert.Equal(isRefused, queries.Any(query => query.Code == "text-too-long"));
    }
}
