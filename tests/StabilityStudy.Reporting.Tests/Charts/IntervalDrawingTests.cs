using System.Text.RegularExpressions;
using StabilityStudy.Reporting.Charts;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Charts;

/// <summary>An interval stands on the page where its numbers say, beside lines drawn at the same values.</summary>
public sealed partial class IntervalDrawingTests
{
    [Theory]
    [InlineData(9.33, 7.01, 20.32)]
    [InlineData(-4.72, -6.84, -2.24)]
    [InlineData(0, -12, 0.5)]
    public void A_bar_reaches_from_the_lower_to_the_upper_end(
        double estimate,
        double lower,
        double upper
    )
    {
        var chart = new Chart(
            "",
            new Axis("x", 0, 10, []),
            new Axis("y", -25, 25, []),
            [
                Line(lower),
                Line(upper),
                new IntervalLayer(
                    [new(5, lower, estimate, upper)],
                    MarkerShape.FilledDiamond,
                    null
                ),
            ]
        );
        var drawn = ChartSvg.Draw(new ChartBlock(chart, 80, "words", ""), 400, "t");
        var paths = drawn
            .Descendants()
            .Select(element => element.Attribute("d")?.Value)
            .OfType<string>()
            .Select(path => Segments().Matches(path).Select(match => Height(match)).ToArray())
            .ToArray();

        // Its caps lie on the two lines.
        Assert.Equal([paths[0][0], paths[1][0]], [paths[2][0], paths[2][2]]);
    }

    private static ReferenceLine Line(double value) =>
        new(LineDirection.Horizontal, value, DashStyle.Solid, LineWeight.Thin, null, null);

    private static double Height(Match match) =>
        double.Parse(match.Groups["y"].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"M[-\d.]+ (?<y>[-\d.]+)L[-\d.]+ [-\d.]+",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Segments();
}
