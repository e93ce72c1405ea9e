using System.Text;
using System.Text.Json;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Tests;

/// <summary>Computed figures are rounded further than processors differ; what was measured keeps the digits that were read.</summary>
[Trait("lane", "slow")]
public sealed class FigureDigitsTests
{
    [Theory]
    [InlineData(1.0 / 3, "0.33333333333")]
    [InlineData(2e9 / 3, "666666666.67")]
    [InlineData(-1.25e-7, "-1.25E-07")]
    [InlineData(100, "100")]
    [InlineData(0, "0")]
    [InlineData(double.Epsilon, "5E-324")]
    [InlineData(double.MaxValue, "1.7976931348623157E+308")]
    public void A_figure_has_eleven_significant_digits(double value, string expected)
    {
        Assert.Equal(expected, Written(value));
        Assert.Equal(NumberForm.Rounded(value), NumberForm.Rounded(NumberForm.Rounded(value)));
    }

    /// <summary>The next double above and below, as another processor may compute it: seeded figures of all sizes.</summary>
    [Fact]
    public void A_last_digit_of_another_processor_is_gone_but_for_one_in_a_hundred_thousand_figures()
    {
        const int figures = 100_000;
        var random = new Random(20261130);
        var other = 0;
        for (var i = 0; i < figures; i++)
        {
            var value = (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-6, 7));
            other += Written(value) == Written(Math.BitIncrement(value)) ? 0 : 1;
        }

        // A unit in the last place of a double is 1.1e-16 to 2.2e-16 of it, the step that is written 1e-11 to 1e-10.
        Assert.InRange(other, 0, figures / 20_000);
    }

    private static string Written(double value) =>
        Encoding
            .UTF8.GetString(AnalysisJson.Write(json => Form.Number.Write(json, value)))
            .TrimEnd();

    [Fact]
    public void No_figure_of_a_file_has_more_digits_and_decimals_stay_as_they_were_read()
    {
        var reader = new Utf8JsonReader(AnalysisJsonTests.Example);
        var figures = 0;
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.Number && !reader.TryGetUInt64(out _))
            {
                var digits = Encoding
                    .UTF8.GetString(reader.ValueSpan)
                    .Split('E')[0]
                    .Replace(".", "", StringComparison.Ordinal)
                    .TrimStart('-', '0');
                Assert.InRange(digits.Length, 0, AnalysisJson.Digits);
                figures++;
            }
        }

        Assert.True(figures > 1_000);
        Assert.Contains(
            "\"lowest\": \"20.0\"",
            Encoding.UTF8.GetString(AnalysisJsonTests.Example),
            StringComparison.Ordinal
        );
    }
}
