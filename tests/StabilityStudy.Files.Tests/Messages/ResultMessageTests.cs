using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.OwnTables;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>Results that arrive as messages are the same data, whatever way of writing their sender has.</summary>
public sealed class ResultMessageTests
{
    private static readonly int s_seeds = LongProof.Setting("MESSAGE_FILES", 12);

    public static TheoryData<string> Studies =>
        ["aptt-room-temperature", "routine-room-temperature"];

    [Theory]
    [MemberData(nameof(Studies))]
    public void Messages_of_every_way_of_writing_give_the_same_canonical_bytes(string name)
    {
        var expected = CanonicalTests.Read(SentExample.Plain(name)).Canonical.Data;
        for (var seed = 1; seed <= s_seeds; seed++)
        {
            var outcome = StudyIntake.Read(SentExample.AsMessages(name, seed));

            Assert.True(
                outcome.TryGet(out var study),
                $"seed {seed}: {string.Join('\n', outcome.Queries.Where(query => query.Severity == Severity.Stop).Select(query => $"{query.Source}: {query.Message}"))}"
            );
            var found = study.Canonical.Data;
            Assert.Equal(expected.Length, found.Length);
            for (var i = 0; i < found.Length; i++)
            {
                Assert.Equal(WithoutLines(expected[i].Bytes), WithoutLines(found[i].Bytes));
            }

            AssertNoPerson(study, outcome.Queries);
        }
    }

    public static TheoryData<Misreading> Cases => [.. MessageCases.All];

    [Fact]
    public void The_good_message_gives_no_stop_query() =>
        Assert.DoesNotContain(
            StudyIntake.Read(MessageCases.Good).Queries,
            query => query.Severity == Severity.Stop
        );

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void What_could_be_read_wrongly_ends_in_a_query(Misreading misreading) =>
        AssertNoPerson(misreading.Require());

    private static void AssertNoPerson(StudyIntakeResult study, IEnumerable<DataQuery> queries)
    {
        AssertNoPerson(
            study.Canonical.Files.Select(file => Encoding.UTF8.GetString(file.Bytes.Span))
        );
        AssertNoPerson(queries);
    }

    private static void AssertNoPerson(IEnumerable<DataQuery> queries) =>
        AssertNoPerson(
            queries.Select(query =>
                $"{query.Source} {query.Observed} {query.Message} {query.Action}"
            )
        );

    private static void AssertNoPerson(IEnumerable<string> texts)
    {
        foreach (var text in texts)
        {
            Assert.DoesNotContain(ResultMessages.Mark, text, StringComparison.Ordinal);
            Assert.DoesNotContain(ResultMessages.Beside, text, StringComparison.Ordinal);
        }
    }

    private static string WithoutLines(ReadOnlyMemory<byte> bytes) =>
        string.Join(
            '\n',
            Encoding
                .UTF8.GetString(bytes.Span)
                .Split('\n')
                .Select(line => line[..Math.Max(0, line.LastIndexOf(','))])
        );
}
