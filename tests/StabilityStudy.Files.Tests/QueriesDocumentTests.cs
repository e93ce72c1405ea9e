using System.Reflection;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Tests;

public sealed class QueriesDocumentTests
{
    [Fact]
    public void QUERIES_md_lists_every_query_as_the_program_raises_it()
    {
        RepositoryFile.RequireSame(
            "src/StabilityStudy.Files/QUERIES.md",
            QueryCatalog.ToMarkdown()
        );
    }

    /// <summary>A kind that a report may state without its being found again needs a rule for what may be stated.</summary>
    [Fact]
    public void Every_query_that_cannot_be_raised_again_has_a_rule() =>
        Assert.Equal(
            QueryCatalog
                .All.Where(kind => kind.Worded is not null)
                .Select(kind => kind.Code)
                .Order(StringComparer.Ordinal),
            OwnFileStatements.Kinds.Select(kind => kind.Code).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void The_catalog_holds_every_declared_kind_once()
    {
        var declared = new[] { typeof(QueryKind).Assembly, typeof(QueryCatalog).Assembly }
            .SelectMany(assembly => assembly.GetTypes())
            .Where(type => !type.ContainsGenericParameters)
            .SelectMany(type =>
                type.GetFields(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static)
            )
            .Where(field => field.FieldType == typeof(QueryKind))
            .Select(field => (QueryKind)field.GetValue(null)!)
            .Distinct<QueryKind>(ReferenceEqualityComparer.Instance)
            .Select(kind => kind.Code)
            .Order(StringComparer.Ordinal)
            .ToArray();

        Assert.True(declared.Length > 100, $"found only {declared.Length} kinds");
        Assert.Equal(
            declared,
            QueryCatalog.All.Select(kind => kind.Code).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Every_kind_has_a_rank_and_every_rank_has_kinds() =>
        Assert.Equal(
            Enum.GetValues<QueryRank>(),
            QueryCatalog.All.Select(kind => kind.Rank).Distinct().Order()
        );

    [Theory]
    [InlineData("wide-limit")]
    [InlineData("low-confidence")]
    [InlineData("low-share")]
    [InlineData("decided-by-estimate-alone")]
    [InlineData("late-baseline")]
    public void A_protocol_that_asks_for_little_comes_before_what_was_not_recorded(string lax)
    {
        Assert.True(RankOf(lax) < RankOf("lot-not-recorded"));
        Assert.True(RankOf(lax) < RankOf("outlier-flagged"));

        static QueryRank RankOf(string code) =>
            QueryCatalog.All.Single(kind => kind.Code == code).Rank;
    }

    [Fact]
    public void What_is_not_listed_is_counted()
    {
        var queries = new QueryList();
        for (var line = 1; line <= QueryList.MostListed + 37; line++)
        {
            queries.Add(
                RowQueries.MoreDecimals,
                new QuerySource("results.csv", line, "result"),
                "",
                "m",
                "a"
            );
        }

        var all = queries.ToImmutable();

        Assert.Equal(QueryList.MostListed + 1, all.Length);
        Assert.Contains("37 more", all[^1].Message, StringComparison.Ordinal);
        Assert.Equal("more-decimals", all[^1].Code);
    }

    [Fact]
    public void A_stop_query_that_is_only_counted_still_stops()
    {
        var queries = new QueryList();
        for (var line = 1; line <= QueryList.MostListed + 1; line++)
        {
            queries.Add(
                RowQueries.MissingValue,
                new QuerySource("results.csv", line, "unit"),
                "",
                "m",
                "a"
            );
        }

        Assert.False(queries.Conclude("value").TryGet(out _));
        Assert.Equal(Severity.Stop, queries.ToImmutable()[^1].Severity);
    }
}
