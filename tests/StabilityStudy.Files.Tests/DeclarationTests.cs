using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Inspection;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Notices;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Tests;

/// <summary>Each declared key and column reads its own example, and refuses what its form does not allow.</summary>
public sealed class DeclarationTests
{
    private static readonly CodeSet AnyCode = new("code", "a file", null);

    private static readonly KnownCodes AnyStudy = new(
        AnyCode,
        AnyCode,
        AnyCode,
        FrozenDictionary<string, Analyte>.Empty,
        null,
        FrozenDictionary<string, TestOccasion>.Empty,
        AnyCode,
        AnyCode,
        AnyCode,
        new FlagSet(FrozenDictionary<string, FlagMeaning>.Empty, true),
        new LocalTimes(null, true)
    );

    [Theory]
    [InlineData("protocol.toml")]
    [InlineData("study.toml")]
    [InlineData("notice.toml")]
    [InlineData("inspection.toml")]
    public void The_example_of_every_key_can_be_read(string file)
    {
        var queries = new QueryList();
        var count = ReadExamples(
            file switch
            {
                "protocol.toml" => ProtocolKeys.Table,
                "study.toml" => FactsKeys.Table,
                "notice.toml" => NoticeKeys.Table,
                _ => InspectionKeys.Table,
            },
            queries
        );

        Assert.Empty(
            queries.ToImmutable().Select(query => $"{query.Source.Column}: {query.Message}")
        );
        Assert.True(
            count
                > file switch
                {
                    "notice.toml" => 30,
                    "inspection.toml" => 8,
                    _ => 40,
                }
        );
    }

    [Theory]
    [InlineData("specimens")]
    [InlineData("results")]
    [InlineData("controls")]
    [InlineData("pairs")]
    public void The_example_of_every_column_can_be_read(string file)
    {
        var columns = file switch
        {
            "specimens" => TubeColumns.Table.Columns,
            "results" => ResultColumns.Table.Columns,
            "controls" => ControlColumns.Table.Columns,
            _ => PairColumns.Columns,
        };
        var queries = new QueryList();
        var text =
            $"{string.Join(',', columns.Names)}\n{string.Join(',', columns.All.Select(c => c.Example))}\n";
        var read = 0;

        DataTable.Read(
            Encoding.UTF8.GetBytes(text),
            "file.csv",
            columns,
            AnyStudy,
            queries,
            row =>
            {
                foreach (var column in columns.All)
                {
                    Read(row, column);
                    read++;
                }
            },
            linesBefore: 0
        );

        Assert.Empty(
            queries.ToImmutable().Select(query => $"{query.Source.Column}: {query.Message}")
        );
        Assert.Equal(columns.All.Length, read);
    }

    [Fact]
    public void An_unknown_kind_of_criterion_is_a_query_with_the_nearest_known_one()
    {
        var query = Assert.Single(
            StudyIntake
                .Read(GoodStudy.Edited("protocol.toml", "kind = \"bias\"", "kind = \"biass\""))
                .Queries,
            query => query.Severity == Severity.Stop
        );

        Assert.Equal("unknown-word", query.Code);
        Assert.Contains("Did you mean \"bias\"?", query.Message, StringComparison.Ordinal);
    }

    private static int ReadExamples(KeyTable keys, QueryList queries)
    {
        var text = string.Join('\n', keys.Keys.Select(key => key.Line));
        var entries = TomlDocument.Read(Encoding.UTF8.GetBytes(text), "file.toml", queries);
        var table = TomlTable.Root(entries!, keys, "file.toml", queries);
        foreach (var key in keys.Keys.Where(key => key is not TableKey))
        {
            Read(table, key);
        }

        return keys.Keys.Count
            + keys.Keys.OfType<TableKey>()
                .Where(key => key.Keys.Keys.Count > 0)
                .Sum(key => ReadExamples(key.Keys, queries));
    }

    // The type of a value is known to its declaration only.
    private static void Read(object from, object declared) =>
        from.GetType()
            .GetMethod(nameof(TomlTable.Read), BindingFlags.Public | BindingFlags.Instance)!
            .MakeGenericMethod(declared.GetType().GetGenericArguments())
            .Invoke(from, [declared, true]);
}
