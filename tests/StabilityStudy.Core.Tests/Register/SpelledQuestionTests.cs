using StabilityStudy.Core.Register;
using static StabilityStudy.Core.Tests.Register.RegisterExample;

namespace StabilityStudy.Core.Tests.Register;

/// <summary>What people type for the codes of a register, and what is not guessed.</summary>
public sealed class SpelledQuestionTests
{
    private static readonly WindowRegister s_register = new([Approved]);

    private static BenchQuestion In(WindowRegister register, BenchQuestion question) =>
        SpelledQuestion.In(register, question);

    [Fact]
    public void Capitals_and_names_are_read_as_codes()
    {
        var question = In(
            s_register,
            new BenchQuestion("activated partial thromboplastin TIME", Today)
            {
                Group = "unfractionated heparin",
                Storage = "Whole blood, closed, 18 to 25 °C",
                Instrument = "an1",
                Lot = "r-2601",
            }
        );

        Assert.Equal(
            ("aPTT", "ufh", "wb-rt", "AN1", "R-2601"),
            (question.Analyte, question.Group, question.Storage, question.Instrument, question.Lot)
        );
    }

    [Theory]
    [InlineData("heparin")]
    [InlineData("uf")]
    [InlineData("")]
    public void What_is_neither_code_nor_name_is_not_guessed(string group) =>
        Assert.Equal(group, In(s_register, Ask("1 h", group)).Group);

    [Fact]
    public void The_word_unknown_is_no_group() =>
        Assert.Null(In(s_register, Ask("1 h", "Unknown")).Group);

    [Fact]
    public void Of_two_that_a_text_may_mean_none_is_taken()
    {
        var two = s_register with
        {
            Reports =
            [
                Approved,
                Second(
                    Approved.Windows[0] with
                    {
                        Row = Approved.Windows[0].Row with { Analyte = "APTT" },
                    }
                ),
            ],
        };

        Assert.Equal("aptt", In(two, Ask("1 h") with { Analyte = "aptt" }).Analyte);
        Assert.Equal("APTT", In(two, Ask("1 h") with { Analyte = "APTT" }).Analyte);
    }

    [Fact]
    public void A_report_that_does_not_count_names_nothing_and_may_be_about_anything_it_hides()
    {
        var hidden = Approved with { Standing = ReportStanding.NotTrusted };

        Assert.Equal("aptt", In(new([hidden]), Ask("1 h") with { Analyte = "aptt" }).Analyte);
        Assert.True(SpelledQuestion.MayMean(hidden, "aptt"));
        Assert.False(SpelledQuestion.MayMean(Approved, "PT"));
        Assert.True(SpelledQuestion.MayMean(Approved with { Windows = [] }, "PT"));
    }
}
