using CsCheck;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Tests.Pdf;

public class LineBreakingTests
{
    private static readonly Gen<string> Texts = Gen.String[Gen.Char["ab- /_.1%\n検é"], 0, 120];

    [Fact]
    public void No_line_is_wider_than_asked_and_no_character_is_lost() =>
        Texts
            .Select(Gen.Double[20, 200])
            .Sample(
                (text, width) =>
                {
                    var lines = LineBreaking.Break(text, TextStyle.Body, width);

                    Assert.All(
                        lines,
                        line => Assert.True(TextStyle.Body.Width(line) <= width + 1e-9)
                    );
                    Assert.Equal(
                        text.Replace(" ", "").Replace("\n", "").Replace('検', '□'),
                        string.Concat(lines).Replace(" ", "")
                    );
                },
                iter: 500,
                seed: "0000KtbYkxT4"
            );

    [Fact]
    public void Number_and_unit_stay_on_one_line()
    {
        var width = TextStyle.Body.Width("between 18 and 25");

        Assert.Equal(
            ["between 18 and", "25 °C."],
            LineBreaking.Break("between 18 and 25 °C.", TextStyle.Body, width)
        );
    }

    [Fact]
    public void Words_that_are_too_long_break_after_a_joint_if_there_is_one()
    {
        var width = TextStyle.Body.Width("signed/WB-RT-12-3F2");

        Assert.Equal(
            ["signed/WB-RT-12-", "3F2A91C0.pdf"],
            LineBreaking.Break("signed/WB-RT-12-3F2A91C0.pdf", TextStyle.Body, width)
        );
    }

    [Fact]
    public void Line_feeds_and_empty_text_give_lines()
    {
        Assert.Equal(["a", "", "b"], LineBreaking.Break("a\n\nb", TextStyle.Body, 100));
        Assert.Equal([""], LineBreaking.Break("", TextStyle.Body, 100));
    }
}
