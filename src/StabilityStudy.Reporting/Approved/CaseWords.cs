using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Approved;

/// <summary>A case in words.</summary>
internal static class CaseWords
{
    /// <summary>"3 h 59 min", "6 h 00 min 01 s", "−3 min", "not known".</summary>
    public static string Age(BenchCase item) =>
        item.Question.Waited switch
        {
            null => "not known",
            { } waited when waited < TimeSpan.Zero => "−"
                + DurationText.FormatToMinute(waited.Negate()),
            { Seconds: > 0 } waited => string.Create(
                CultureInfo.InvariantCulture,
                $"{DurationText.FormatToMinute(waited)} {waited.Seconds:00} s"
            ),
            { } waited => DurationText.FormatToMinute(waited),
        };

    /// <summary>What is to be entered beside group and age.</summary>
    public static string Besides(BenchCase item)
    {
        var question = item.Question;
        return item.Fact switch
        {
            CaseFact.AllTrue => "",
            CaseFact.SecondPast when item.Answer.Age is { } age =>
                $"counts as {DurationText.FormatToMinute(age)}",
            CaseFact.SecondPast => "",
            CaseFact.PlasmaOff => $"plasma off at {Of(question.Separated)}",
            CaseFact.SpunEarly => $"spun {Of(question.SpinToTest)} before the test",
            CaseFact.OtherLot => "another lot",
            CaseFact.OtherInstrument => "another analyzer",
            CaseFact.AlsoCovered => string.Join(
                ", ",
                [
                    question.Instrument,
                    question.Lot,
                    .. question.SpinToTest is { } spin
                        ? new[] { $"spun {Of(spin)} before the test" }
                        : [],
                ]
            ),
            CaseFact.NoLot => "lot not stated",
            CaseFact.NoInstrument => "analyzer not stated",
            CaseFact.NoSpin => "time of the spin not stated",
            CaseFact.OnDay => $"test on {ApprovedWords.Day(question.Day)}",
            CaseFact.NoTime => "no collection time",
            CaseFact.Negative => "collected after the test",
            CaseFact.TwiceOnClock => "an hour that exists twice, no offset",
            CaseFact.UnfitTube => $"tube {question.Unfit}",
        };
    }

    private static string Of(TimeSpan? time) =>
        time is { } known ? DurationText.FormatToMinute(known) : "";
}
