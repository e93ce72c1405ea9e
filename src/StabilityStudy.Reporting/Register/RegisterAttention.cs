using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Report.Notices;

namespace StabilityStudy.Reporting.Register;

/// <summary>What somebody has to attend to in a register on a day, a sentence each.</summary>
/// <param name="register">The register.</param>
/// <param name="day">The day.</param>
public sealed class RegisterAttention(WindowRegister register, DateOnly day)
{
    /// <summary>A review that is due within so many days is named.</summary>
    private const int DueSoonDays = 30;

    private readonly ImmutableArray<StandingWindow> _windows = register.On(day);

    /// <summary>What does not count, or cannot hold as it stands.</summary>
    public ImmutableArray<string> Faults => [.. Found().Distinct()];

    /// <summary>What is in force and will not stay so for long.</summary>
    public ImmutableArray<string> DueSoon => [.. ComingSoon().Distinct()];

    private IEnumerable<StandingWindow> InForce =>
        _windows.Where(item => item.Standing == WindowStanding.InForce);

    private IEnumerable<string> Found()
    {
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
            .Concat(ReviewsDueSoon());

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
