using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Report.Notices;

namespace StabilityStudy.Reporting.Register;

/// <summary>What somebody has to attend to in a register on a day, a sentence each.</summary>
/// <param name="register">The register.</param>
/// <param name="day">The day.</param>
/// <param name="instrument">An instrument that is to be used; null for none that is asked about.</param>
/// <param name="lot">A reagent lot that is to be used; null for none that is asked about.</param>
public sealed class RegisterAttention(
    WindowRegister register,
    DateOnly day,
    string? instrument = null,
    string? lot = null
)
{
    /// <summary>A review that is due within so many days is named.</summary>
    private const int DueSoonDays = 30;

    /// <summary>A lot that ends within so many days is named: a study of the next one takes weeks.</summary>
    private const int LotSoonDays = 60;

    private readonly ImmutableArray<StandingWindow> _windows = register.On(day);

    /// <summary>What does not count, or cannot hold as it stands.</summary>
    public ImmutableArray<string> Faults => [.. Found().Distinct()];

    /// <summary>What is in force and will not stay so for long.</summary>
    public ImmutableArray<string> DueSoon => [.. ComingSoon().Distinct()];

    private IEnumerable<StandingWindow> InForce =>
        _windows.Where(item => item.Standing == WindowStanding.InForce);

    private IEnumerable<string> Found()
    {
        if (register.Reports.IsEmpty && register.Notices.IsEmpty)
        {
            yield return "There is no signed report in the folder, so no window is in force by it. Put the signed reports of your studies into it (PDF files).";
        }

        foreach (var report in register.Reports)
        {
            if (report.Standing == ReportStanding.NotTrusted)
            {
                yield return $"{report.File}: not counted. {report.Why}";
            }
            else if (report.Standing == ReportStanding.NotDecided)
            {
                yield return $"{report.File}: nothing in force. {report.Why}";
            }
        }

        foreach (var (notice, why) in register.NoticesWithoutEffect())
        {
            yield return $"{notice.File}, {NoticeWords.Title(notice.Notice.Kind)}: not applied. {why}";
        }

        foreach (var item in _windows.Where(item => item.Standing == WindowStanding.InDoubt))
        {
            yield return $"{RegisterWords.Named(item)}: in doubt, and not to be relied on until somebody has found out; ask the director. {item.Doubt}";
        }

        foreach (var item in _windows.Where(item => item.Standing == WindowStanding.PastReview))
        {
            yield return $"{RegisterWords.Named(item)}: to be reviewed by {AnswerWords.Day(item.Review)}; until then ask the director.";
        }

        foreach (var item in InForce.Where(item => !item.AlsoClaimedBy.IsEmpty))
        {
            yield return $"{RegisterWords.Named(item)}: also claimed by {string.Join(", ", item.AlsoClaimedBy)}, and neither says that it replaces the other. The shorter holds.";
        }

        foreach (var item in InForce.Where(item => item.Window.IsInWordsOnly))
        {
            yield return $"{RegisterWords.Named(item)}: decided in words only, which no program can read. Ask the director.";
        }
    }

    private IEnumerable<string> ComingSoon() =>
        InForce
            .SelectMany(item =>
                item.Coming.Select(notice =>
                    $"{RegisterWords.Named(item)}: {NoticeWords.Title(notice.Notice.Kind)} takes effect on {AnswerWords.Day(notice.From)} ({notice.File})."
                )
            )
            .Concat(ReviewsDueSoon())
            .Concat(RepeatsDue());

    private IEnumerable<string> RepeatsDue()
    {
        foreach (var item in InForce.Where(item => item.Window.Approved > item.Window.Row.Today))
        {
            var window = item.Window;
            var beyond = $"beyond today's {AnswerWords.Time(window.Row.Today)}";
            if (window.DueFor(instrument, lot) is { } tier)
            {
                yield return $"{RegisterWords.Named(item)}: {AnswerWords.Uncovered(window, instrument, lot)}. Due before it is used {beyond}: {AnswerWords.DueStudy(tier, item, lot)}.";
            }

            if (window.LotsUntil is { } until && until.DayNumber - day.DayNumber <= LotSoonDays)
            {
                yield return $"{RegisterWords.Named(item)}: lot {AnswerWords.Codes(window.Row.Reagents)} {(until < day ? "ended" : "ends")} on {AnswerWords.Day(until)}. Due before another is used {beyond}: {AnswerWords.DueStudy(RepeatTier.Reduced, item, null)}.";
            }
        }
    }

    private IEnumerable<string> ReviewsDueSoon() =>
        InForce
            .Where(item =>
                item.Review is { } review && review.DayNumber - day.DayNumber <= DueSoonDays
            )
            .Select(item =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{RegisterWords.Named(item)}: review is due in {AnswerWords.Count(item.Review!.Value.DayNumber - day.DayNumber, "day")}."
                )
            );
}
