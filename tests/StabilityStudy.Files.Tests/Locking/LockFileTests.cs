using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Locking;

namespace StabilityStudy.Files.Tests.Locking;

public sealed class LockFileTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly DateTimeOffset s_at = new(
        2026,
        2,
        27,
        16,
        40,
        12,
        TimeSpan.FromHours(1)
    );

    private static StoredLocks TwoLocks()
    {
        var first = new StoredLock(new ProtocolLock(1, "aa", s_at, "LS1", null), null, [], []);
        var second = new StoredLock(
            new ProtocolLock(
                2,
                "bb",
                s_at.AddDays(1),
                "Dr. \"Q\" \\",
                "limit of the mean corrected"
            ),
            first.StatementHash(),
            [1, 2, 3],
            [4]
        );
        return new StoredLocks([first, second]);
    }

    private static string Text(StoredLocks locks) =>
        Encoding.UTF8.GetString(
            LockFile.With(new StoredLocks(locks.All[..^1]), locks.All[^1]).Span
        );

    private static string[] Codes(string text) =>
        [.. LockFile.Read(Encoding.UTF8.GetBytes(text)).Queries.Select(query => query.Code)];

    [Fact]
    public void What_is_written_is_read_again()
    {
        var read = LockFile.Read(Encoding.UTF8.GetBytes(Text(TwoLocks())));

        Assert.True(read.TryGet(out var locks));
        Assert.Equal(TwoLocks().All.Select(item => item.Lock), locks.All.Select(item => item.Lock));
        Assert.Equal([1, 2, 3], locks.All[1].Signature);
        Assert.Equal(TwoLocks().LastHash, locks.LastHash);
    }

    [Theory]
    [InlineData("protocol_sha256 = \"aa\"", "protocol_sha256 = \"ab\"")]
    [InlineData("by = \"LS1\"", "by = \"LS2\"")]
    [InlineData("16:40:12", "16:40:13")]
    [InlineData("number = 2", "number = 3")]
    public void An_earlier_lock_that_was_changed_breaks_the_chain(string from, string to)
    {
        var text = Text(TwoLocks());
        Assert.Contains(from, text, Comparison);

        Assert.Contains("lock-chain-broken", Codes(text.Replace(from, to, Comparison)));
    }

    [Fact]
    public void A_first_lock_that_was_taken_away_breaks_the_chain()
    {
        var text = Text(TwoLocks());
        var first = text.IndexOf("[[lock]]", Comparison);
        var second = text.LastIndexOf("[[lock]]", Comparison);

        Assert.Equal(["lock-chain-broken"], Codes(text[..first] + text[second..]));
    }

    [Theory]
    [InlineData("AQID", "A?ID")]
    [InlineData("2026-02-27T", "2026-02-30T")]
    [InlineData("+01:00", "")]
    public void A_value_that_cannot_be_read_is_named(string from, string to) =>
        Assert.Contains("unreadable-lock", Codes(Text(TwoLocks()).Replace(from, to, Comparison)));

    [Fact]
    public void A_lock_that_does_not_follow_is_not_written() =>
        Assert.Throws<ArgumentException>(() => LockFile.With(StoredLocks.None, TwoLocks().All[1]));

    [Fact]
    public void The_statement_names_every_fact_on_a_line_of_its_own() =>
        Assert.Equal(
            "protocol lock\nnumber 1\nprotocol_sha256 aa\nat 2026-02-27T16:40:12+01:00\nby LS1\n",
            Encoding.UTF8.GetString(TwoLocks().All[0].Statement().Span)
        );
}
