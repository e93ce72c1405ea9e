using System.Text.RegularExpressions;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Signing;
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
        Days(s_first, s_last).ToImmutableDictionary(day => day, RegisterOfTwoYears.Register.On)
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
        Assert.Equal(
            ["E1", "F1"],
            register.Reports.Where(report => !report.Counts).Select(report => report.File)
        );
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
            [
                "B1-Q1-Withdrawn",
                "D1-Reviewed",
                "H1-Adopted",
                "I1-EndedByNewDirector",
                "R1-Withdrawn",
                "S1-ended",
            ],
            register.Notices.Where(item => item.Counts).Select(item => item.File).Order()
        );
        Assert.Equal(
            ["N1-withdrawn"],
            register.Notices.Where(item => !item.Counts).Select(item => item.File)
        );
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
            Sections()
                .Where(section =>
                    section.Subject.StartsWith("question ", StringComparison.Ordinal)
                ),
            section =>
                Assert.NotEqual(
                    BenchVerdict.Test,
                    MayTest
                        .Answer(register, Question(section.Subject["question ".Length..], s_last))
                        .Verdict
                )
        );
    }

    [Theory]
    [InlineData("2026-12-29", false, "")]
    [InlineData("2026-12-30", true, "ends")]
    [InlineData("2027-02-28", true, "ends")]
    [InlineData("2027-03-01", true, "ended")]
    public void A_lot_that_ends_makes_a_reduced_study_due(string day, bool isDue, string word)
    {
        var notes = new RegisterAttention(
            RegisterOfTwoYears.Register,
            DateOnly.Parse(day, CultureInfo.InvariantCulture)
        )
            .DueSoon.Where(note => note.StartsWith("PTC", StringComparison.Ordinal))
            .ToArray();

        Assert.Equal(isDue ? 1 : 0, notes.Length);
        Assert.All(
            notes,
            note =>
                Assert.EndsWith(
                    $": lot PT-2604 {word} on 2027-02-28. Due before another is used beyond today's 8 h: for a new lot of the same reagent a reduced study at 9 h (start --repeat C1); for another reagent the full study.",
                    note,
                    StringComparison.Ordinal
                )
        );
    }

    [Theory]
    [InlineData("A1", "2027-01-01", RepeatTier.Reduced, "SHEET-PT-")]
    [InlineData("A1", "2027-01-01", RepeatTier.Full, "SHEET-PT-")]
    [InlineData(
        "B1",
        "2027-02-10",
        RepeatTier.Reduced,
        "none of its windows is in force. PTB, No anticoagulant, wb-rt ("
    )]
    [InlineData(
        "N1",
        "2027-02-10",
        RepeatTier.Reduced,
        "none of its windows is in force. PTN, No anticoagulant, wb-rt ("
    )]
    [InlineData(
        "J1",
        "2027-02-10",
        RepeatTier.Reduced,
        "it put no window beyond today's rule into force"
    )]
    public void What_is_not_in_force_is_not_repeated(
        string name,
        string day,
        RepeatTier tier,
        string fault
    )
    {
        Assert.Null(RegisterOfTwoYears.Repeat(name, day, tier, out var why));
        Assert.StartsWith(fault, why, StringComparison.Ordinal);
        Assert.Contains(
            name switch
            {
                "A1" => "came in its place",
                "B1" => "withdrawn 2027-02-10",
                "N1" => "in doubt",
                _ => "",
            },
            why,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_a_notice_left_is_repeated_and_the_whole_of_what_it_took_with_a_note()
    {
        var inPart = RegisterOfTwoYears.Repeat("R1", "2027-02-10", RepeatTier.Reduced, out _)!;
        var before = RegisterOfTwoYears.Repeat("R1", "2027-02-09", RepeatTier.Reduced, out _)!;
        var whole = RegisterOfTwoYears.Repeat("B1", "2027-02-10", RepeatTier.Full, out _)!;

        Assert.Contains("10 h", inPart.Protocol.Text, StringComparison.Ordinal);
        Assert.Contains("12 h", before.Protocol.Text, StringComparison.Ordinal);
        Assert.NotEqual(inPart.Protocol.Text, before.Protocol.Text);
        Assert.Contains(
            "longer withdrawn 2027-02-10",
            Assert.Single(inPart.Notes),
            StringComparison.Ordinal
        );
        Assert.Empty(before.Notes);
        Assert.Contains(
            "withdrawn 2027-02-10",
            Assert.Single(whole.Notes),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_notice_over_several_reports_takes_from_each_the_windows_that_name_its_rows()
    {
        var request = RegisterOfTwoYears.Taken(NoticeKind.Withdrawn, "2028-07-01") with
        {
            Windows = [new("PTB/none", "10 h"), new("PTQ/none", "none")],
        };

        var drawn = Assert.IsType<NoticeAttempt.Drawn>(
            RegisterOfTwoYears.Notice(request, "B1", "Q1")
        );

        Assert.Equal(
            [("PTB", 10d), ("PTQ", 8d)],
            drawn.Notice.Reports.Select(report =>
                (Assert.Single(report.Windows).Analyte, report.Windows[0].Kept.TotalHours)
            )
        );
    }

    [Theory]
    [InlineData("PTB/none", "Q1: \"PTB/none\" names no window of it in force")]
    [InlineData("PTX/none", "\"PTX/none\" names no window in force of any of the reports")]
    public void A_name_that_fits_no_report_and_a_report_that_no_name_fits_are_told(
        string name,
        string told
    )
    {
        var request = RegisterOfTwoYears.Taken(NoticeKind.Withdrawn, "2028-07-01");
        ImmutableArray<RowText> others =
            name == "PTB/none" ? [] : [new("PTB/none", "none"), new("PTQ/none", "none")];

        var refused = Assert.IsType<NoticeAttempt.Refused>(
            RegisterOfTwoYears.Notice(
                request with
                {
                    Windows = [.. others, new(name, "none")],
                },
                "B1",
                "Q1"
            )
        );

        Assert.StartsWith(told, refused.Why, StringComparison.Ordinal);
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
                    block.Split('\n').Where(line => line.Length > 0 && line[0] != '#').ToArray()
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
                                    DateOnly.Parse(
                                        match.Groups["from"].Value,
                                        CultureInfo.InvariantCulture
                                    ),
                                    DateOnly.Parse(
                                        match.Groups["to"].Value,
                                        CultureInfo.InvariantCulture
                                    ),
                                    match.Groups["answer"].Value
                                );
                            }),
                    ]
                )),
        ];

    [GeneratedRegex(
        @"^(?<from>\d{4}-\d\d-\d\d) \.\. (?<to>\d{4}-\d\d-\d\d)  (?<answer>[a-z][a-z ]*?)\s*(\|.*)?$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Line();
}
