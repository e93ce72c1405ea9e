using System.Reflection;
using StabilityStudy.Core.Queries;
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

    [Fact]
    public void The_catalog_holds_every_declared_kind_once()
    {
        Type[] types =
        [
            typeof(FileQueries),
            typeof(LockFileQueries),
            typeof(ProtocolQueries),
            typeof(CautionQueries),
            typeof(CsvQueries),
            typeof(RowQueries),
        ];

        var declared = types
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Static))
            .Select(field => field.GetValue(null))
            .OfType<QueryKind>()
            .Concat(AnalysisQueries.All);

        Assert.Equal(declared, QueryCatalog.All);
        Assert.Equal(
            QueryCatalog.All.Length,
            QueryCatalog.All.Select(kind => kind.Code).Distinct().Count()
        );
    }

    [Fact]
    public void Every_code_in_the_source_of_the_analysis_is_listed_with_its_severity()
    {
        var raised = RaisedCodes.Find();

        Assert.True(raised.Length >= 20, $"found only {raised.Length} codes");
        Assert.Empty(raised.Where(code => !QueryCatalog.All.Any(code.IsOf)));
        Assert.Empty(RaisedCodes.PutTogether());
    }

    [Theory]
    [InlineData("hemolysis-not-recorded")]
    [InlineData("spun-not-recorded")]
    [InlineData("calibration-differs-within-pair")]
    public void A_code_about_what_is_not_recorded_or_differs_is_found_whole(string code) =>
        Assert.Contains(RaisedCodes.Find(), raised => raised.Code == code);

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
