using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;

namespace StabilityStudy.Files.Tests.Locking;

/// <summary>What an amendment changed, read from the copies of the locked protocols.</summary>
public sealed class LockedProtocolTests
{
    private const string Before = "locked-1.toml";

    [Fact]
    public void A_larger_number_alone_keeps_the_rules()
    {
        var amendment = Amended("specimens = 40", "specimens = 30").Inputs.Locks[1];

        Assert.Equal(
            [
                new ProtocolDifference("group.none.specimens", "30", "40", DifferenceKind.Number)
                {
                    Meaning = "group none: planned number of specimens",
                },
            ],
            amendment.Differences
        );
        Assert.True(amendment.KeepsRules);
    }

    [Theory]
    [InlineData(
        "share_percent_min = 85",
        "share_percent_min = 80",
        "criterion.each.share_percent_min",
        DifferenceKind.Rule
    )]
    [InlineData("percent = 7.5", "percent = 8.5", "limit.aptt-bias.percent", DifferenceKind.Rule)]
    [InlineData(
        "percent = 7.5",
        "percent = 7.5\nreason = \"a dose follows it\"",
        "limit.aptt-bias.reason",
        DifferenceKind.Rule
    )]
    [InlineData("version = \"2\"", "version = \"1\"", "version", DifferenceKind.Label)]
    [InlineData(
        "fill_percent_min = 90",
        "fill_percent_min = 85",
        "eligibility.fill_percent_min",
        DifferenceKind.Rule
    )]
    [InlineData("ran this study", "was there", "signatories.author.meaning", DifferenceKind.Label)]
    [InlineData("minimum_days = 5", "minimum_days = 6", "minimum_days", DifferenceKind.Rule)]
    public void Each_difference_names_its_place_and_what_it_bears_on(
        string now,
        string before,
        string key,
        DifferenceKind kind
    )
    {
        var amendment = Amended(now, before).Inputs.Locks[1];
        var difference = Assert.Single(amendment.Differences!.Value);

        Assert.Equal((key, kind), (difference.Key, difference.Kind));
        Assert.Equal(kind != DifferenceKind.Rule, amendment.KeepsRules);
    }

    [Theory]
    [InlineData(
        "share_percent_min = 85",
        "share_percent_min = 80",
        "criterion each: least share that agrees, percent"
    )]
    [InlineData("percent = 7.5", "percent = 8.5", "limit aptt-bias: percent of the baseline")]
    [InlineData(
        "fill_percent_min = 90",
        "fill_percent_min = 85",
        "eligibility: least fill, percent of nominal"
    )]
    [InlineData(
        "limits = { aPTT = \"aptt-bias\" }",
        "limits = { aPTT = \"aptt-each\" }",
        "criterion mean, limits: aPTT"
    )]
    [InlineData(
        "minimum_days = 5",
        "minimum_days = 6",
        "fewest collection days, and runs of either kind, on which a criterion can be met"
    )]
    public void Each_difference_tells_its_place_in_words(string now, string before, string words) =>
        Assert.Equal(
            words,
            Assert.Single(Amended(now, before).Inputs.Locks[1].Differences!.Value).Meaning
        );

    /// <summary>What others found at several times in one group is told apart by its time.</summary>
    [Fact]
    public void Entries_of_one_group_are_told_apart_by_what_stands_beside_it()
    {
        const string levels = "decision_levels = [40.0, 60.0]";
        string Changes(string at8) =>
            levels
            + "\nexpected_changes = [{ group = \"none\", time = \"6 h\", percent = 4, source = \"a paper\", chance = \"open\" }, { group = \"none\", time = \"8 h\", percent = "
            + at8
            + ", source = \"a paper\", chance = \"open\" }]";
        var before = ReadOnlyBytes(Changes("5"));
        var after = ReadOnlyBytes(Changes("6"));

        var difference = Assert.Single(LockedProtocols.Between(before, after)!.Value);
        Assert.Equal(
            ("analyte.aPTT.expected_changes.none 8 h.percent", "5", "6"),
            (difference.Key, difference.Before, difference.After)
        );

        static ReadOnlyMemory<byte> ReadOnlyBytes(string text) =>
            Encoding.UTF8.GetBytes(
                GoodStudy.Protocol.Replace(levels, text, StringComparison.Ordinal)
            );
    }

    [Fact]
    public void A_meaning_of_a_level_is_named_by_its_level_and_group()
    {
        const string levels = "decision_levels = [40.0, 60.0]";
        var amendment = Amended(
            levels,
            levels
                + "\nlevel_meanings = [{ level = 60.0, group = \"none\", below = \"a dose could be raised\" }]"
        );

        Assert.Equal(
            [
                "analyte.aPTT.level_meanings.60.0 none.level",
                "analyte.aPTT.level_meanings.60.0 none.group",
                "analyte.aPTT.level_meanings.60.0 none.below",
            ],
            amendment.Inputs.Locks[1].Differences!.Value.Select(item => item.Key)
        );
    }

    [Fact]
    public void What_is_new_and_what_was_taken_away_is_told_apart()
    {
        var taken = Amended("cv_percent = { between_run = 2.5 }\n", "").Inputs.Locks[1];
        var added = Amended("", "planned_looks = 1\n", after: "window_step").Inputs.Locks[1];

        Assert.Null(Assert.Single(taken.Differences!.Value).Before);
        Assert.Null(Assert.Single(added.Differences!.Value).After);
    }

    [Fact]
    public void Without_the_copy_nothing_is_known_and_the_rules_are_not_kept()
    {
        var files = Files("specimens = 40", "specimens = 30");
        var outcome = StudyIntake.Read(new StudyBytes(files.Files.Remove(Before)));

        Assert.True(outcome.TryGet(out var study));
        Assert.Null(study.Inputs.Locks[1].Differences);
        Assert.False(study.Inputs.Locks[1].KeepsRules);
        Assert.Contains(outcome.Queries, query => query.Code == "locked-copy-missing");
    }

    [Fact]
    public void A_copy_that_is_not_the_locked_protocol_is_not_believed()
    {
        var files = Files("specimens = 40", "specimens = 30");
        var outcome = StudyIntake.Read(files.With(Before, GoodStudy.Utf8("format = 1")));

        Assert.True(outcome.TryGet(out var study));
        Assert.Null(study.Inputs.Locks[0].Protocol);
        Assert.Null(study.Identity.HashOf(Before));
    }

    [Fact]
    public void The_copy_is_an_input_of_the_study() =>
        Assert.NotNull(Amended("specimens = 40", "specimens = 30").Identity.HashOf(Before));

    private static StudyIntakeResult Amended(string now, string before, string? after = null)
    {
        var outcome = StudyIntake.Read(Files(now, before, after));
        Assert.True(outcome.TryGet(out var study), string.Join('\n', outcome.Queries));
        return study;
    }

    /// <summary>The study, and an earlier version of its protocol in which one place was otherwise; both locked.</summary>
    private static StudyBytes Files(string now, string before, string? after = null)
    {
        var protocol = GoodStudy.Bytes.Files["protocol.toml"];
        var text = Encoding.UTF8.GetString(protocol.Span);
        var at = text.IndexOf(after ?? now, StringComparison.Ordinal);
        var earlier = GoodStudy.Utf8(text[..at] + before + text[(at + now.Length)..]);
        var first = Lock(1, earlier, null);
        var second = Lock(2, protocol, first.StatementHash());
        var locks = LockFile.With(new StoredLocks([first]), second);
        return GoodStudy.Bytes.With(LockFile.Name, locks).With(Before, earlier);
    }

    private static StoredLock Lock(int number, ReadOnlyMemory<byte> protocol, string? previous) =>
        new(
            new ProtocolLock(
                number,
                InputDigest.Sha256(protocol.Span),
                new DateTimeOffset(2026, 2, number, 8, 0, 0, TimeSpan.Zero),
                "LS1",
                number == 1 ? null : "a reason"
            ),
            previous,
            [],
            []
        );
}
