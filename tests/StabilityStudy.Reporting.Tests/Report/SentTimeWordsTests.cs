using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Report.Conduct;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Whose clock a time of a message was (HL7 Version 2.5.1, chapter 7, OBX-14, OBX-18 and OBX-19).</summary>
public sealed class SentTimeWordsTests
{
    [Theory]
    [InlineData("OBX-19", 0, "by the clock of the instrument that the results name")]
    [InlineData("OBX-19", 7, "7 of the results name no instrument")]
    [InlineData("OBX-14", 0, "not the instrument's own time of analysis")]
    public void The_words_say_whose_clock_it_was(string field, int without, string says) =>
        Assert.Contains(
            says,
            SentTimeWords.Of(new SentTime("tested_at", field, without)),
            StringComparison.Ordinal
        );

    [Fact]
    public void Of_other_times_they_name_the_field() =>
        Assert.Equal(
            "collected_at from SPM-17.1, else OBR-7",
            SentTimeWords.Of(new SentTime("collected_at", "SPM-17.1, else OBR-7", 0))
        );
}
