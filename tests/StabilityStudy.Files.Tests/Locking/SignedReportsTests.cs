using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Files.Tests.Locking;

public sealed class SignedReportsTests
{
    private static readonly DateTimeOffset s_first = new(2026, 6, 1, 9, 0, 0, TimeSpan.Zero);

    /// <summary>A report of the given results, signed by two people, and then one of other results that nobody has signed.</summary>
    private static ReadOnlyMemory<byte> Record() =>
        Lines([
            (RecordAction.Report, Files("p1", "d1"), ("report.pdf", "r1")),
            (RecordAction.Sign, [new FileHash("report.pdf", "r1")], ("S-1.pdf", "s1")),
            (RecordAction.Sign, [new FileHash("S-1.pdf", "s1")], ("S-1.pdf", "s2")),
            (RecordAction.Report, Files("p1", "d2"), ("report.pdf", "r2")),
        ]);

    [Fact]
    public void The_files_of_the_signed_report_raise_nothing() =>
        Assert.Empty(SignedReports.Check(Record(), Files("p1", "d1")));

    [Fact]
    public void Files_that_changed_since_the_signature_are_named_with_its_day()
    {
        var query = Assert.Single(SignedReports.Check(Record(), Files("p1", "d2")));

        Assert.Equal("signed-with-other-files", query.Code);
        Assert.Contains("on 2026-06-03", query.Message, StringComparison.Ordinal);
        Assert.Contains(": results.csv.", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_was_added_or_taken_away_is_a_change_too()
    {
        var query = Assert.Single(
            SignedReports.Check(Record(), [.. Files("p1", "d1"), new FileHash("controls.csv", "c")])
        );

        Assert.Contains(": controls.csv.", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_signature_or_without_its_report_nothing_is_asked()
    {
        Assert.Empty(SignedReports.Check(default, Files("p1", "d1")));
        Assert.Empty(
            SignedReports.Check(
                Lines([(RecordAction.Report, Files("p1", "d1"), ("report.pdf", "r1"))]),
                Files("p1", "d2")
            )
        );
        Assert.Empty(
            SignedReports.Check(
                Lines([
                    (
                        RecordAction.Sign,
                        [new FileHash("report.pdf", "of another folder")],
                        ("S.pdf", "s1")
                    ),
                ]),
                Files("p1", "d2")
            )
        );
    }

    private static ImmutableArray<FileHash> Files(string protocol, string results) =>
        [new FileHash("protocol.toml", protocol), new FileHash("results.csv", results)];

    private static ReadOnlyMemory<byte> Lines(
        ImmutableArray<(
            string Action,
            ImmutableArray<FileHash> Inputs,
            (string Name, string Hash) Output
        )> entries
    )
    {
        var record = Array.Empty<byte>();
        foreach (var (i, (action, inputs, output)) in entries.Index())
        {
            var entry = new RecordEntry(
                action,
                s_first.AddDays(i),
                "LS1",
                "stability-study 0",
                inputs,
                [new FileHash(output.Name, output.Hash)]
            );
            record = [.. record, .. StudyRecord.Next(record, entry).Span];
        }

        return record;
    }
}
