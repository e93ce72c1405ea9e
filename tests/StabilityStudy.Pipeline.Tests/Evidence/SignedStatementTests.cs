using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>The text in a signature for programs: one form only, and every released one.</summary>
public sealed class SignedStatementTests
{
    private static readonly SignedStatement s_statement = new(
        "approver",
        "MD \"x\"",
        new ApproverDecision(DecisionKind.Conditions, "the drift")
        {
            Windows =
            [
                new(
                    new(
                        "aPTT",
                        "ufh",
                        "wb-rt",
                        TimeSpan.FromHours(6),
                        TimeSpan.FromHours(1),
                        ["AN1", "AN2"],
                        ["R-1"],
                        []
                    ),
                    TimeSpan.FromMinutes(330),
                    null,
                    [1]
                ),
                new(
                    new(
                        "aPTT",
                        "none",
                        "wb-rt",
                        null,
                        TimeSpan.FromHours(4),
                        ["AN2"],
                        [],
                        ["North"]
                    )
                    {
                        IsOfOneInstrument = true,
                    },
                    null,
                    TimeSpan.FromHours(2),
                    []
                ),
            ],
            Conditions = ["closed tubes"],
            Effective = new(2026, 7, 1),
            Review = new(2027, 7, 1),
            Earlier = new(
                new(2026, 5, 1, 9, 30, 0, TimeSpan.FromHours(-5)),
                "Medical Director Two (approver)",
                "declined: too few days",
                "the days were counted"
            ),
        },
        "ab",
        "0.4.0",
        ["the pages"]
    )
    {
        RecordSha256 = "cd",
    };

    private static readonly SignedStatement s_withoutRows = s_statement with
    {
        Format = SignedStatement.FormatWithoutRows,
        Decision = new ApproverDecision(DecisionKind.Conditions, "6 h only"),
        RecordSha256 = null,
    };

    public static TheoryData<bool> Forms => [true, false];

    private static string Json(bool withRows) => (withRows ? s_statement : s_withoutRows).ToJson();

    [Theory]
    [MemberData(nameof(Forms))]
    public void It_is_read_again(bool withRows)
    {
        var json = Json(withRows);

        Assert.Equal(
            json,
            Assert.IsType<StatementReading.Read>(SignedStatement.Read(json)).Statement.ToJson()
        );
    }

    /// <summary>As version 0.3.0 wrote it; the reports kept of it hold such statements.</summary>
    [Fact]
    public void The_form_without_rows_is_kept() =>
        Assert.Equal(
            "{\"format\":1,\"role\":\"approver\",\"credentials\":\"MD \\\"x\\\"\",\"decision\":\"conditions\",\"decisionText\":\"6 h only\",\"inputDigest\":\"ab\",\"toolVersion\":\"0.4.0\",\"acceptedNotRecomputed\":[\"the pages\"]}",
            Json(withRows: false)
        );

    [Theory]
    [InlineData(true, "{}")]
    [InlineData(true, "no JSON")]
    [InlineData(true, null)]
    [InlineData(true, "\"role\"", "\"role\":\"x\",\"role\"")]
    [InlineData(false, "\"role\"", "\"role\":\"x\",\"role\"")]
    [InlineData(true, "\"role\"", "\"more\":1,\"role\"")]
    [InlineData(true, "\"approved\"", "\"approved\":null,\"approved\"")]
    [InlineData(true, "\"kind\":\"conditions\"", "\"kind\":\"perhaps\"")]
    [InlineData(false, "\"conditions\"", "\"perhaps\"")]
    [InlineData(true, "\"PT5H30M\"", "\"PT330M\"")]
    [InlineData(true, "\"PT5H30M\"", "\"a while\"")]
    [InlineData(true, "\"PT5H30M\"", "\"P99999999999D\"")]
    [InlineData(true, "2027-07-01", "2027-7-1")]
    [InlineData(true, "2026-05-01T09:30:00-05:00", "2026-05-01T14:30:00Z")]
    [InlineData(true, "\"conditions\":[1]", "\"conditions\":[1.5]")]
    [InlineData(true, "\"conditions\":[1]", "\"conditions\":\"1\"")]
    [InlineData(true, "\"format\":2,", "")]
    [InlineData(true, "\"format\":2,", "\"format\":1,")]
    [InlineData(true, "\"format\":2,", "\"format\":0,")]
    [InlineData(true, "\"format\":2,", "\"format\":-1,")]
    [InlineData(false, "\"format\":1,", "\"format\":2,")]
    [InlineData(true, ":\"ab\"", ": \"ab\"")]
    public void One_of_another_form_is_malformed(bool withRows, string? from, string? to = null)
    {
        var json = Json(withRows);
        var text = to is null ? from : json.Replace(from!, to, StringComparison.Ordinal);

        Assert.NotEqual(json, text);
        Assert.IsType<StatementReading.Malformed>(SignedStatement.Read(text));
    }

    [Fact]
    public void One_of_a_later_version_is_said_to_be_that() =>
        Assert.IsType<StatementReading.OfLaterVersion>(
            SignedStatement.Read("{\"format\":3,\"signatory\":\"approver\"}")
        );
}
