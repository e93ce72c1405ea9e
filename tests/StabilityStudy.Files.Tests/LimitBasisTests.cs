using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Files.Tests;

/// <summary>A limit that names biological variation as its source is held to the goal that follows from it.</summary>
public sealed class LimitBasisTests
{
    private const string Basis =
        "biological_variation = { cvi = 5.8, cvg = 8.4, grade = \"desirable\", goal = \"bias\" }\n";

    [Fact]
    public void A_limit_up_to_the_goal_is_read_with_it()
    {
        var study = CanonicalTests.Read(
            GoodStudy.Edited("protocol.toml", "percent = 7.5\n", "percent = 2.55\n" + Basis)
        );

        Assert.Equal(
            new LimitBasis(5.8m, 8.4m, GoalGrade.Desirable, GoalKind.Bias),
            study.Inputs.Protocol.Limits[0].Basis
        );
    }

    [Theory]
    [InlineData("percent = 2.56\n", "at most 2.55")]
    [InlineData("percent = 7.5\n", "at most 2.55")]
    public void A_limit_above_the_goal_stops_with_the_goal(string percent, string action)
    {
        var query = Assert.Single(
            StudyIntake
                .Read(GoodStudy.Edited("protocol.toml", "percent = 7.5\n", percent + Basis))
                .Queries
        );

        Assert.Equal(("limit-above-goal", "limit.percent"), (query.Code, query.Source.Column));
        Assert.Contains(action, query.Action, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("desirable", "desired", "unknown-word", "limit.biological_variation.grade")]
    [InlineData("\"bias\"", "\"mean\"", "unknown-word", "limit.biological_variation.goal")]
    [InlineData("cvi = 5.8", "cvi = 0", "out-of-range", "limit.biological_variation.cvi")]
    [InlineData("cvg = 8.4, ", "", "missing-key", "limit.biological_variation.cvg")]
    public void A_broken_basis_is_a_query(string from, string to, string code, string key) =>
        Assert.Contains(
            StudyIntake
                .Read(
                    GoodStudy.Edited(
                        "protocol.toml",
                        "percent = 7.5\n",
                        "percent = 2.55\n" + Basis.Replace(from, to, StringComparison.Ordinal)
                    )
                )
                .Queries,
            query => (query.Code, query.Source.Column) == (code, key)
        );
}
