using StabilityStudy.Core.Queries;

namespace StabilityStudy.Core.Tests.Queries;

public sealed class QueryReferenceTests
{
    private static readonly DataQuery s_query = new(
        RaisedKinds.All[0],
        new QuerySource("results.csv", 84, "result"),
        "31.4",
        "Something is odd."
    );

    [Fact]
    public void It_is_eight_hexadecimal_digits() =>
        Assert.True(QueryReference.IsReference(QueryReference.Of(s_query)));

    [Fact]
    public void What_was_read_is_no_part_of_it() =>
        Assert.Equal(QueryReference.Of(s_query), QueryReference.Of(s_query with { Observed = "" }));

    [Fact]
    public void Other_words_another_line_or_another_kind_are_another_query()
    {
        DataQuery[] others =
        [
            s_query with
            {
                Text = "Something else is odd.",
            },
            s_query with
            {
                Source = s_query.Source with { Line = 85 },
            },
            s_query with
            {
                Source = s_query.Source with { Column = "unit" },
            },
            s_query with
            {
                Source = s_query.Source with { File = "specimens.csv" },
            },
            s_query with
            {
                Kind = RaisedKinds.All[1],
            },
        ];

        Assert.DoesNotContain(QueryReference.Of(s_query), others.Select(QueryReference.Of));
    }

    [Theory]
    [InlineData("3f2a91bc", true)]
    [InlineData("3F2A91BC", false)]
    [InlineData("3f2a91b", false)]
    [InlineData("3f2a91bg", false)]
    [InlineData("", false)]
    public void Only_such_a_text_is_one(string text, bool isOne) =>
        Assert.Equal(isOne, QueryReference.IsReference(text));
}
