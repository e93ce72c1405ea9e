using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class RobustnessWordsTests
{
    public static TheoryData<RobustnessQuestion, string> Questions =>
        new()
        {
            {
                new(RobustnessKind.OneSubjectLeftOut, 40) { Changing = 0 },
                "with each of 40 subjects left out of the mean in turn"
            },
            {
                new(RobustnessKind.OneSubjectLeftOut, 40) { Changing = 1 },
                "with one subject left out of the mean: 1 of 40 would change the conclusion"
            },
            {
                new(RobustnessKind.OneSubjectLeftOut, 40)
                {
                    Changing = 2,
                    Otherwise = new("P003", "mean", new NoLevelReason()),
                },
                "with one subject left out of the mean: 2 of 40 would change the conclusion; without P003 criterion mean: the protocol states no decision level of the analyte"
            },
            {
                new(RobustnessKind.FewestMoreOutside, 3),
                "if 3 more specimens had been outside the limit"
            },
            {
                new(RobustnessKind.FewestMoreChanged, 1) { Level = 60.5m },
                "if one more specimen had changed the side of 60.5"
            },
            { new(RobustnessKind.FewestMoreChanged, 2), "if 2 more specimens had changed class" },
            {
                new(RobustnessKind.LeftOutCountedOutside, 1),
                "if one pair left out at this time point had been outside the allowable difference"
            },
            {
                new(RobustnessKind.LeftOutAtMeasuredValues, 4) { Excluded = new(3, 2) },
                "with 4 pairs left out put back at the measured values; of the excluded, 2 of 3 were outside the allowable difference"
            },
            {
                new(RobustnessKind.OtherScale) { Scale = ChangeScale.LogRatio },
                "with the mean on the log-ratio scale in place of percent"
            },
            {
                new(RobustnessKind.OtherScale) { Scale = ChangeScale.Percent },
                "with the mean on the percent scale in place of the log-ratio"
            },
        };

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_question_says_its_numbers(RobustnessQuestion question, string words) =>
        Assert.Equal(words, RobustnessWords.WithCriterion(question));
}
