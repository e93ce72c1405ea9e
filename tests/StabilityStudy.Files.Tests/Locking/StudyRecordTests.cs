using System.Text;
using System.Text.Json;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Files.Tests.Locking;

public sealed class StudyRecordTests
{
    private static RecordEntry Entry(string action, string output, string hash) =>
        new(
            action,
            new DateTimeOffset(2026, 2, 27, 16, 40, 12, TimeSpan.FromHours(1)),
            "Lab Scientist \u00D6ne",
            "stability-study 0",
            [new FileHash("protocol.toml", "aa")],
            [new FileHash(output, hash)]
        );

    private static string ThreeLines()
    {
        var record = Array.Empty<byte>();
        foreach (
            var entry in new[]
            {
                Entry(RecordAction.Lock, "protocol.lock", "l1"),
                Entry(RecordAction.Report, "report.pdf", "r1"),
                Entry(RecordAction.Report, "report.pdf", "r2"),
            }
        )
        {
            record = [.. record, .. StudyRecord.Next(record, entry).Span];
        }

        return Encoding.UTF8.GetString(record);
    }

    private static (string Code, int? Line)[] Check(string record, string? lockHash = "l1") =>
        [
            .. StudyRecord
                .Check(Encoding.UTF8.GetBytes(record), lockHash)
                .Select(query => (query.Code, query.Source.Line)),
        ];

    [Fact]
    public void A_record_that_was_only_added_to_raises_no_query()
    {
        Assert.Empty(Check(ThreeLines()));
        Assert.Empty(Check("", null));
    }

    [Fact]
    public void Each_line_is_a_json_object_with_the_hash_of_the_line_before()
    {
        var lines = ThreeLines().TrimEnd('\n').Split('\n');
        var second = JsonDocument.Parse(lines[1]).RootElement;

        Assert.Equal(3, lines.Length);
        Assert.Equal(
            Convert.ToHexStringLower(
                System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(lines[0]))
            ),
            second.GetProperty("previous").GetString()
        );
        Assert.Equal("Lab Scientist \u00D6ne", second.GetProperty("by").GetString());
        Assert.Equal("r1", second.GetProperty("outputs").GetProperty("report.pdf").GetString());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_line_that_was_taken_away_is_found(int taken)
    {
        var lines = ThreeLines().Split('\n').ToList();
        lines.RemoveAt(taken);

        Assert.Equal([("record-chain-broken", taken + 1)], Check(string.Join('\n', lines)));
    }

    [Theory]
    [InlineData("\"r1\"", "\"r9\"", 3)]
    [InlineData("\"number\":2", "\"number\":4", 2)]
    [InlineData("\"number\":2", "\"number\":\"2\"", 2)]
    [InlineData("{\"number\":2", "[\"number\":2", 2)]
    public void A_line_that_was_changed_is_found(string from, string to, int line)
    {
        var record = ThreeLines();
        Assert.Contains(from, record, StringComparison.Ordinal);

        Assert.Equal(
            [("record-chain-broken", line)],
            Check(record.Replace(from, to, StringComparison.Ordinal))
        );
    }

    [Theory]
    [InlineData("l2")]
    [InlineData(null)]
    public void A_lock_other_than_the_recorded_one_is_found(string? hash) =>
        Assert.Equal([("lock-not-as-recorded", null)], Check(ThreeLines(), hash));

    [Theory]
    [InlineData("")]
    [InlineData(
        "{\"number\":1,\"at\":\"2026-01-01T00:00:00+00:00\",\"action\":\"report\",\"inputs\":{},\"previous\":\"\",\"outputs\":{\"report.pdf\":\"r1\"}}\n"
    )]
    public void A_lock_that_no_line_names_is_found(string record)
    {
        Assert.Equal([("lock-not-recorded", null)], Check(record));
        Assert.Empty(Check(record, null));
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    public void A_record_that_names_fewer_locks_than_there_are_was_begun_later(
        int locks,
        int queries
    ) =>
        Assert.Equal(
            queries,
            StudyRecord
                .Check(Encoding.UTF8.GetBytes(ThreeLines()), "l1", locks)
                .Count(query => query.Code == "lock-not-recorded")
        );

    [Fact]
    public void A_record_without_a_last_line_feed_goes_on_on_a_new_line()
    {
        var cut = ThreeLines().TrimEnd('\n');
        var next = StudyRecord.Next(
            Encoding.UTF8.GetBytes(cut),
            Entry(RecordAction.Sign, "x.pdf", "s1")
        );

        Assert.Empty(Check(cut + Encoding.UTF8.GetString(next.Span)));
    }
}
