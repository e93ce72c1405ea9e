using System.Text;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Tests.Pdf;
using UglyToad.PdfPig;
using static StabilityStudy.Core.Tests.Register.RegisterExample;

namespace StabilityStudy.Pipeline.Tests.Bench;

/// <summary>The documents by which a bench works: what they say is what the register answers, on every paper, and where it does not answer clearly there are none.</summary>
[Trait("lane", "slow")]
public sealed class BenchDocumentsTests
{
    private static readonly TimeSpan s_minute = TimeSpan.FromMinutes(1);

    /// <summary>Registers from which documents are made.</summary>
    private static readonly Dictionary<string, RegisteredReport[]> s_registers = new()
    {
        ["one"] = [Approved],
        ["another lot longer"] =
        [
            Approved,
            Second(
                None("4 h", "8 h", "8 h") with
                {
                    Row = None("4 h", "8 h", "8 h").Row with { Reagents = ["R-2602"] },
                }
            ),
        ],
        ["overlapping"] = [Approved, Second(None("4 h", "8 h", "8 h"))],
        ["shorter today"] =
        [
            Approved with
            {
                Windows =
                [
                    None("4 h", "6 h", "6 h"),
                    Heparin("1 h", null, null) with
                    {
                        Interim = Time("30 min"),
                    },
                ],
            },
        ],
        ["nothing approved"] =
        [
            Approved with
            {
                Windows = [None("4 h", "6 h", null), Heparin("1 h", null, null)],
            },
        ],
        ["no heparin"] = [Approved with { Windows = [None("4 h", "6 h", "6 h")] }],
        ["no review"] = [Approved with { Review = null }],
        ["instrument not recorded"] =
        [
            Approved with
            {
                Windows =
                [
                    None("4 h", "6 h", "6 h") with
                    {
                        Row = None("4 h", "6 h", "6 h").Row with { Instruments = [] },
                    },
                    Heparin("1 h", null, null),
                ],
            },
        ],
        ["two instruments"] =
        [
            Approved with
            {
                Windows =
                [
                    None("4 h", "6 h", "6 h") with
                    {
                        Row = None("4 h", "6 h", "6 h").Row with
                        {
                            Instruments = ["AN1", "AN2"],
                            Reagents = ["R-2601", "R-2602"],
                        },
                    },
                    Heparin("1 h", "2 h", "2 h") with
                    {
                        Row = Heparin("1 h", "2 h", "2 h").Row with
                        {
                            Instruments = ["AN1", "AN2"],
                            Reagents = ["R-2601", "R-2602"],
                        },
                    },
                ],
            },
        ],
    };

    public static TheoryData<string> Registers => [.. s_registers.Keys];

    public static TheoryData<ApprovedDocumentKind, PaperSize> Documents =>
        [
            .. Enum.GetValues<ApprovedDocumentKind>()
                .SelectMany(kind =>
                    new[] { PaperSize.A4, PaperSize.Letter }.Select(paper =>
                        (Xunit.TheoryDataRow<ApprovedDocumentKind, PaperSize>)(kind, paper)
                    )
                ),
        ];

    private static BenchRules[] Rules(string register, DateOnly? day = null) =>
        [
            .. BenchDocuments.RulesOf(
                new WindowRegister([.. s_registers[register]]),
                day ?? Today,
                "aPTT",
                "wb-rt",
                null
            ),
        ];

    [Theory]
    [MemberData(nameof(Registers))]
    public void A_system_that_follows_the_rule_file_answers_as_the_register_does(string register)
    {
        foreach (var rules in Rules(register))
        {
            var file = new RuleFile(ApprovedDocuments.RulesCsv(rules));
            string?[] lots = [.. rules.Scope.Lots, "another", null];
            string?[] instruments = [.. rules.Scope.Instruments, "another", null];
            foreach (var group in new[] { "none", "ufh", "unknown", "other", null })
            foreach (var lot in lots)
            foreach (var instrument in instruments)
            foreach (var day in new DateOnly?[] { rules.Day, rules.Until, rules.Until?.AddDays(1) })
            {
                for (var age = TimeSpan.Zero; age <= TimeSpan.FromHours(9); age += s_minute)
                {
                    TimeSpan?[] offs =
                    [
                        null,
                        TimeSpan.FromMinutes(20),
                        TimeSpan.FromMinutes(60),
                        TimeSpan.FromMinutes(61),
                        age - TimeSpan.FromMinutes(61),
                    ];
                    foreach (var off in offs)
                    {
                        var question = rules.Question(group, age) with
                        {
                            Lot = lot,
                            Instrument = instrument,
                            Day = day ?? rules.Day,
                            Separated = off,
                            Spun = off ?? age - TimeSpan.FromMinutes(30),
                        };

                        Assert.Equal(
                            (question, VerdictWords.Of(rules.Answer(question).Verdict)),
                            (question, file.Answer(question))
                        );
                    }
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Registers))]
    public void The_rule_file_gives_every_case_its_answer_on_the_days_on_which_it_holds(
        string register
    )
    {
        foreach (var rules in Rules(register))
        {
            var file = new RuleFile(ApprovedDocuments.RulesCsv(rules));

            Assert.All(
                BenchCase.Of(rules).Where(item => item.Question.Day >= rules.Day),
                item =>
                    Assert.Equal(VerdictWords.Of(item.Answer.Verdict), file.Answer(item.Question))
            );
        }
    }

    // Written by hand from the rules of the example: 4 h and 6 h without anticoagulant, 1 h and as plasma 4 h on heparin and where nothing is known.
    [Fact]
    public void The_cases_hold_every_window_a_minute_before_at_and_after_its_end()
    {
        var answers = BenchCase
            .Of(Rules("one")[0])
            .Where(item => item.Fact == CaseFact.AllTrue)
            .Select(item =>
                $"{item.Question.Group ?? "-"} {item.Question.Waited?.TotalMinutes} {VerdictWords.Of(item.Answer.Verdict)}"
            );

        Assert.Equal(
            [
                "none 239 test",
                "none 240 test",
                "none 241 test",
                "none 359 test",
                "none 360 test",
                "none 361 do not test",
                "ufh 59 test",
                "ufh 60 test",
                "ufh 61 do not test",
                "unknown 59 test",
                "unknown 60 test",
                "unknown 61 do not test",
                "- 60 test",
                "- 61 do not test",
                "other 60 test",
                "other 61 do not test",
            ],
            answers
        );
    }

    [Theory]
    [InlineData(CaseFact.SpunEarly, "ask the director")]
    [InlineData(CaseFact.NoSpin, "ask the director")]
    [InlineData(CaseFact.OtherLot, "ask the director")]
    [InlineData(CaseFact.NoLot, "ask the director")]
    [InlineData(CaseFact.OtherInstrument, "ask the director")]
    [InlineData(CaseFact.NoInstrument, "ask the director")]
    [InlineData(CaseFact.AlsoCovered, "test")]
    [InlineData(CaseFact.NoTime, "do not test")]
    [InlineData(CaseFact.Negative, "do not test")]
    [InlineData(CaseFact.TwiceOnClock, "do not test")]
    [InlineData(CaseFact.UnfitTube, "do not test")]
    [InlineData(CaseFact.SecondPast, "do not test")]
    public void A_fact_that_is_broken_has_a_case(CaseFact fact, string answer)
    {
        var cases = BenchCase.Of(Rules("one")[0]).Where(item => item.Fact == fact).ToArray();

        Assert.NotEmpty(cases);
        Assert.All(cases, item => Assert.Equal(answer, VerdictWords.Of(item.Answer.Verdict)));
    }

    [Fact]
    public void The_first_and_the_last_day_have_cases()
    {
        var cases = BenchCase
            .Of(Rules("one")[0])
            .Where(item => item.Fact == CaseFact.OnDay)
            .Select(item =>
                $"{ApprovedWordsDay(item.Question.Day)} {VerdictWords.Of(item.Answer.Verdict)}"
            );

        Assert.Equal(
            [
                "2026-03-31 do not test",
                "2026-04-01 test",
                "2027-03-31 test",
                "2027-04-01 ask the director",
            ],
            cases
        );
    }

    private static string ApprovedWordsDay(DateOnly day) =>
        day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void Where_two_reports_overlap_the_shorter_window_is_written()
    {
        var rules = Rules("overlapping");

        Assert.All(
            rules,
            item => Assert.Equal(Time("6 h"), item.Rules.Single(rule => rule.Group == "none").Limit)
        );
    }

    [Fact]
    public void Lots_with_windows_of_their_own_have_documents_of_their_own()
    {
        var rules = Rules("another lot longer");

        Assert.Equal(
            [("R-2601", Time("6 h")), ("R-2602", Time("8 h"))],
            rules
                .Select(item =>
                    (
                        Lot: item.Scope.Lots[0],
                        Limit: item.Rules.Single(rule => rule.Group == "none").Limit!.Value
                    )
                )
                .OrderBy(item => item.Lot)
        );
    }

    [Fact]
    public void Before_a_signed_decision_takes_effect_the_documents_end_with_the_day_before()
    {
        var rules = Rules("one", new DateOnly(2026, 3, 25))[0];

        Assert.Equal(new DateOnly(2026, 3, 25), rules.From);
        Assert.Equal(new DateOnly(2026, 3, 31), rules.Until);
        Assert.DoesNotContain(rules.Rules, rule => rule.IsApproved);
    }

    // The notice takes effect on 10 June 2026.
    [Theory]
    [InlineData(NoticeKind.Withdrawn, null, "2026-06-09", "6 h", "2026-06-09")]
    [InlineData(NoticeKind.Withdrawn, null, "2026-06-10", "4 h", null)]
    [InlineData(NoticeKind.Withdrawn, "5 h", "2026-06-10", "5 h", "2027-03-31")]
    [InlineData(NoticeKind.EndedByNewDirector, null, "2026-06-10", "4 h", null)]
    public void A_notice_shortens_and_ends_the_documents(
        NoticeKind kind,
        string? stays,
        string day,
        string limit,
        string? until
    )
    {
        const string state = "the file as it was signed";
        var report = Approved with { FileSha256s = [state] };
        var window = new NoticedWindow(
            "aPTT",
            "none",
            "No anticoagulant",
            "wb-rt",
            "whole blood",
            Time("4 h"),
            new(2026, 4, 1)
        )
        {
            Window = Time("6 h"),
            Remaining = stays is null ? null : Time(stays),
            Instruments = ["AN1"],
            Lots = ["R-2601"],
        };
        var notice = new RegisteredNotice(
            "notice.pdf",
            NoticeStanding.Counts,
            new Notice(kind, "Medical Director One", "approver", "invented")
            {
                From = new DateOnly(2026, 6, 10),
                Reports =
                [
                    new(report.Code!, report.InputDigest!, state, "Medical Director One", [window]),
                ],
            }
        )
        {
            SignedAt = new(2026, 6, 1, 9, 0, 0, TimeSpan.Zero),
        };

        var rules = BenchDocuments.RulesOf(
            new WindowRegister([report]) { Notices = [notice] },
            DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture),
            "aPTT",
            "wb-rt",
            null
        )[0];

        Assert.Empty(rules.Obstacles);
        Assert.Equal(Time(limit), rules.Rules.Single(rule => rule.Group == "none").Limit);
        Assert.Equal(
            until,
            rules.Until?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)
        );
        Assert.Equal(
            stays is null && limit == "4 h",
            rules.Rules.Single(rule => rule.Group == "none").Refused is not null
        );
    }

    public static TheoryData<string, RegisteredReport[], string, BenchReason> Refused =>
        new()
        {
            {
                "not trusted",
                [
                    Approved,
                    new RegisteredReport("x.pdf", ReportStanding.NotTrusted) { Why = "changed" },
                ],
                "2026-05-04",
                BenchReason.ReportNotTrusted
            },
            { "past review", [Approved], "2027-04-01", BenchReason.PastReview },
            {
                "in words",
                [
                    Approved with
                    {
                        Windows = [None("4 h", "6 h", null) with { IsInWordsOnly = true }],
                    },
                ],
                "2026-05-04",
                BenchReason.InWordsOnly
            },
            {
                "refused later",
                [Approved, Second(None("4 h", null, null))],
                "2026-05-04",
                BenchReason.RefusedLater
            },
            {
                "two storages",
                [
                    Approved,
                    Second(
                        None("4 h", "8 h", "8 h") with
                        {
                            StorageWords = "whole blood, open, 2 to 8 °C",
                        }
                    ),
                ],
                "2026-05-04",
                BenchReason.TwoStorages
            },
        };

    [Theory]
    [MemberData(nameof(Refused), DisableDiscoveryEnumeration = true)]
    public void Without_a_clear_answer_there_is_no_document(
        string what,
        RegisteredReport[] reports,
        string day,
        BenchReason reason
    )
    {
        var rules = BenchDocuments.RulesOf(
            new WindowRegister([.. reports]),
            DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture),
            "aPTT",
            "wb-rt",
            null
        );

        Assert.NotEmpty(what);
        Assert.NotEmpty(rules);
        Assert.Contains(rules, item => item.Obstacles.Any(answer => answer.Reason == reason));
    }

    [Theory]
    [InlineData("one", "rules")]
    [InlineData("one", "procedure")]
    [InlineData("one", "clients")]
    [InlineData("one", "training")]
    [InlineData("no heparin", "procedure")]
    [InlineData("nothing approved", "rules")]
    [InlineData("shorter today", "procedure")]
    public void The_text_is_that_of_the_golden_file(string register, string kind)
    {
        var text = ApprovedDocuments.Text(
            Enum.Parse<ApprovedDocumentKind>(kind, ignoreCase: true),
            Rules(register)[0]
        );

        RepositoryFile.RequireSame(
            $"tests/StabilityStudy.Pipeline.Tests/Golden/bench/{register.Replace(' ', '-')}-{kind}.txt",
            text!
        );
    }

    [Fact]
    public void The_files_for_a_system_are_those_of_the_golden_files()
    {
        var rules = Rules("one")[0];
        var files = BenchDocuments.Files(
            rules,
            [rules],
            [ApprovedDocumentKind.Rules],
            PaperSize.A4
        );
        var lines = files
            .Single(file => file.Name.EndsWith("-rules.csv", StringComparison.Ordinal))
            .Bytes;
        var cases = files
            .Single(file => file.Name.EndsWith("-cases.csv", StringComparison.Ordinal))
            .Bytes;

        RepositoryFile.RequireSame(
            "tests/StabilityStudy.Pipeline.Tests/Golden/bench/one-rules.csv",
            Encoding.UTF8.GetString(lines.Span)
        );
        RepositoryFile.RequireSame(
            "tests/StabilityStudy.Pipeline.Tests/Golden/bench/one-cases.csv",
            Encoding.UTF8.GetString(cases.Span)
        );
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public async Task Every_document_is_readable_names_its_report_and_has_the_same_bytes_again(
        ApprovedDocumentKind kind,
        PaperSize paper
    )
    {
        foreach (var register in s_registers.Keys)
        {
            var rules = Rules(register)[0];
            var pdf = BenchDocuments.Pdf(kind, rules, paper).ToArray();

            BenchPagesTests.RequireReadable(pdf, paper);
            Assert.Equal(pdf, BenchDocuments.Pdf(kind, rules, paper).ToArray());
            using var document = PdfDocument.Open(pdf);
            var text = string.Join('\n', document.GetPages().Select(PdfReading.Text));
            Assert.All(
                [
                    "WB-RT-APTT-e33e04c4",
                    "e33e 04c4 0000 0000",
                    "INVENTED EXAMPLE",
                    "director decides",
                    "register as of 2026-05-04",
                ],
                words =>
                    Assert.Contains(PdfReading.WithoutSpaces(words), text, StringComparison.Ordinal)
            );
            if (register == "one")
            {
                Assert.Empty(await ArchiveRules.BrokenBy(pdf));
            }
        }
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public async Task The_card_has_the_unknown_group_first_and_is_one_page(PaperSize paper)
    {
        var file = Path.GetTempFileName();
        await File.WriteAllBytesAsync(
            file,
            BenchDocuments.Pdf(ApprovedDocumentKind.Card, Rules("one")[0], paper),
            TestContext.Current.CancellationToken
        );
        var answer = await OutsideTool.Run("pdftotext", file, "-");
        File.Delete(file);
        var text = string.Join(
            ' ',
            answer.Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        );

        Assert.DoesNotContain("card 2", text, StringComparison.Ordinal);
        var places = new[]
        {
            "aPTT: how old may the tube be?",
            "Anticoagulant unknown",
            "Unfractionated heparin",
            "No anticoagulant",
            "Any other anticoagulant",
            "No time of collection:",
            "From report WB-RT-APTT-e33e04c4",
        }
            .Select(words => (words, text.IndexOf(words, StringComparison.Ordinal)))
            .ToArray();
        Assert.All(places, place => Assert.True(place.Item2 >= 0, place.words + " in " + text));
        Assert.Equal(
            places.Select(place => place.Item2).Order(),
            places.Select(place => place.Item2)
        );
        Assert.Contains("Take down by 2027-03-31", text, StringComparison.Ordinal);
        Assert.Contains(
            "Longer than the manufacturer's limit of 4 h",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void More_groups_than_a_card_holds_give_a_second_one_with_the_unknown_group_again()
    {
        var report = Approved with
        {
            Windows =
            [
                Heparin("1 h", null, null),
                .. Enumerable
                    .Range(1, 7)
                    .Select(i =>
                        None("4 h", null, null) with
                        {
                            Row = None("4 h", null, null).Row with { Group = $"g{i}" },
                            GroupName = $"Invented group {i}",
                        }
                    ),
            ],
        };
        var rules = BenchDocuments.RulesOf(new([report]), Today, null, null, null)[0];

        using var document = PdfDocument.Open(
            BenchDocuments.Pdf(ApprovedDocumentKind.Card, rules, PaperSize.A4).ToArray()
        );
        var pages = document.GetPages().Select(PdfReading.Text).ToArray();
        Assert.True(pages.Length > 1);
        Assert.All(pages, page => Assert.Contains("unknown", page, StringComparison.Ordinal));
        Assert.All(
            rules.Rules.Select(rule => rule.Name).OfType<string>(),
            name =>
                Assert.Contains(
                    pages,
                    page => page.Contains(name.Split(' ')[^1], StringComparison.Ordinal)
                )
        );
    }
}
