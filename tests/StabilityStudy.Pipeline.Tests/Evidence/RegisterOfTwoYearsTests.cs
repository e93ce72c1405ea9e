using System.Text.RegularExpressions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Register;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A register of 21 signed studies and six notices, asked on every day of two years, against answers written by hand.</summary>
[Trait("lane", "slow")]
public sealed partial class RegisterOfTwoYearsTests
{
    private const int FewestStudies = 12;

    private static readonly DateOnly s_first = new(2026, 6, 15);
    private static readonly DateOnly s_last = new(2028, 6, 14);

    /// <summary>The windows as they stand on each day, which every question of that day follows from.</summary>
    private static readonly Lazy<
        ImmutableDictionary<DateOnly, ImmutableArray<StandingWindow>>
    > s_days = new(() =>
        Days(s_first, s_last)
            .ToImmutableDictionary(day => day, RegisterOfTwoYears.Register.On)
    );

    public static TheoryData<string> Subjects => [.. Sections().Select(section => section.Subject)];

    [Theory]
    [MemberData(nameof(Subjects))]
    public void Every_day_is_answered_as_written_by_hand(string subject)
    {
        var periods = Sections().Single(section => section.Subject == subject).Periods;

        // No day is left out and none stands twice.
        Assert.Equal(s_first, periods[0].From);
        Assert.Equal(s_last, periods[^1].To);
        Assert.All(
            periods.Zip(periods.Skip(1)),
            pair => Assert.Equal(pair.First.To.AddDays(1), pair.Second.From)
        );
        var wrong = periods
            .SelectMany(period =>
                Days(period.From, period.To)
                    .Select(day => (day, Expected: period.Answer, Found: Found(subject, day)))
            )
            .Where(item => item.Expected != item.Found)
            .ToArray();
        Assert.Equal(
            "",
            wrong.Length == 0
                ? ""
                : $"{wrong.Length} days, first {wrong[0].day:yyyy-MM-dd}: {wrong[0].Expected} by hand, {wrong[0].Found} found"
        );
    }

    [Fact]
    public void The_register_has_what_it_is_to_show()
    {
        var register = RegisterOfTwoYears.Register;

        Assert.True(register.Reports.Length >= FewestStudies);
        Assert.Equal(["E1", "F1"], register.Reports.Where(report => !report.Counts).Select(report => report.File));
        Assert.StartsWith(
            "The certificate of Medical Director One expired on 2027-03-01",
            register.Reports.Single(report => report.File == "E1").Why,
            StringComparison.Ordinal
        );
        Assert.All(
            register.Reports.Where(report => report.Counts),
            report => Assert.Equal(TimeSpan.FromHours(12), report.Windows[0].Row.Supported)
        );
        Assert.Equal(
            ["B1-Q1-Withdrawn", "D1-Reviewed", "H1-Adopted", "I1-EndedByNewDirector", "R1-Withdrawn", "S1-ended"],
            register.Notices.Where(item => item.Counts).Select(item => item.File).Order()
        );
        Assert.Equal(["N1-withdrawn"], register.Notices.Where(item => !item.Counts).Select(item => item.File));
    }

    [Fact]
    public void A_file_that_shows_nothing_of_what_it_is_about_lets_nothing_be_tested()
    {
        var register = RegisterOfTwoYears.Register with
        {
            Reports =
            [
                .. RegisterOfTwoYears.Register.Reports,
                new RegisteredReport("unreadable.pdf", ReportStanding.NotTrusted),
            ],
        };

        Assert.All(
            Sections().Where(section => section.Subject.StartsWith("question ", StringComparison.Ordinal)),
            section =>
                Assert.NotEqual(
                    BenchVerdict.Test,
                    MayTest.Answer(register, Question(section.Subject["question ".Length..], s_last)).Verdict
                )
        );
    }

    private static string Found(string subject, DateOnly day)
    {
        var (kind, rest) = (subject[..subject.IndexOf(' ')], subject[(subject.IndexOf(' ') + 1)..]);
        var register = RegisterOfTwoYears.Register;
        return kind switch
        {
            "question" => VerdictWords.Of(
                MayTest.AnswerFrom(s_days.Value[day], register, Question(rest, day)).Verdict
            ),
            "standing" => RegisterWords.Word(
                register.Reports.Single(report => report.File == rest).Standing
                == ReportStanding.NotTrusted
                    ? WindowStanding.NotTrusted
                    : s_days.Value[day].Single(item => item.Report.File == rest).Standing
            ),
            _ => register
                .WithoutReport(day)
                .Where(study => study.Code == rest)
                .Select(study => RegisterWords.Word(study.Stage))
                .SingleOrDefault("not known"),
        };
    }

    private static BenchQuestion Question(string text, DateOnly day)
    {
        string[] parts = text.Split(", ");
        string? Fact(string name) =>
            parts
                .Where(part => part.StartsWith(name + " ", StringComparison.Ordinal))
                .Select(part => part[(name.Length + 1)..])
                .SingleOrDefault();
        return new BenchQuestion(parts[0], day)
        {
            Group = parts[1] == "unknown" ? null : parts[1],
            Storage = "wb-rt",
            Waited = parts[2] == "unknown" ? null : Time(parts[2]),
            Lot = Fact("lot"),
            Separated = Fact("separated") is { } off ? Time(off) : null,
        };
    }

    private static TimeSpan Time(string text)
    {
        Assert.True(DurationText.TryParseWindow(text, out var time), text);
        return time;
    }

    private static IEnumerable<DateOnly> Days(DateOnly from, DateOnly to) =>
        Enumerable.Range(0, to.DayNumber - from.DayNumber + 1).Select(from.AddDays);

    private sealed record Period(DateOnly From, DateOnly To, string Answer);

    private sealed record Section(string Subject, ImmutableArray<Period> Periods);

    private static ImmutableArray<Section> Sections() =>
        [
            .. File.ReadAllText(
                    Path.Combine(
                        RepositoryFile.Root,
                        "tests",
                        "ReferenceData",
                        "register",
                        "two_years.txt"
                    )
                )
                .ReplaceLineEndings("\n")
                .Split("\n\n", StringSplitOptions.RemoveEmptyEntries)
                .Select(block =>
                    block
                        .Split('\n')
                        .Where(line => line.Length > 0 && line[0] != '#')
                        .ToArray()
                )
                .Where(lines => lines.Length > 0)
                .Select(lines => new Section(
                    lines[0],
                    [
                        .. lines
                            .Skip(1)
                            .Select(line =>
                            {
                                var match = Line().Match(line);
                                Assert.True(match.Success, line);
                                return new Period(
                                    DateOnly.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture),
                                    DateOnly.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture),
                                    match.Groups[3].Value
                                );
                            }),
                    ]
                )),
        ];

    [GeneratedRegex(@"^(\d{4}-\d\d-\d\d) \.\. (\d{4}-\d\d-\d\d)  ([a-z][a-z ]*?)\s*(\|.*)?$")]
    private static partial Regex Line();
}
