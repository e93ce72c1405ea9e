using System.Globalization;
using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Tests.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace StabilityStudy.Pipeline.Tests.Bench;

[Trait("lane", "slow")]
public sealed class BenchPagesTests
{
    private const double PointsPerMillimeter = 72 / 25.4;

    public static TheoryData<string, PaperSize> Studies =>
        [
            .. BenchStudies
                .Examples.Concat(BenchStudies.ReadyProtocols)
                .SelectMany(name =>
                    new[] { PaperSize.A4, PaperSize.Letter }.Select(paper =>
                        (Xunit.TheoryDataRow<string, PaperSize>)(name, paper)
                    )
                ),
        ];

    [Theory]
    [MemberData(nameof(Studies))]
    public async Task Every_study_gets_its_pages_on_which_nothing_is_cut_off_or_covered(
        string name,
        PaperSize paper
    )
    {
        var pdf = BenchStudies.Pdf(BenchStudies.Of(name), BenchStudies.Request(paper));

        RequireReadable(pdf, paper);
        Assert.Empty(await ArchiveRules.BrokenBy(pdf));
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Draw_and_freezing_sheets_hold_one_to_forty_specimens(PaperSize paper)
    {
        foreach (var count in Enumerable.Range(1, 40))
        {
            RequireReadable(
                BenchStudies.Pdf(
                    BenchStudies.Of("aptt-room-temperature"),
                    BenchStudies.Request(paper, BenchPageKind.Draw).Of("none", count)
                ),
                paper
            );
            RequireReadable(
                BenchStudies.Pdf(
                    BenchStudies.Of("frozen-plasma-70"),
                    BenchStudies.Request(paper, BenchPageKind.Frozen).Of("none", count)
                ),
                paper
            );
        }
    }

    [Theory]
    [InlineData("aptt-room-temperature", PaperSize.A4)]
    [InlineData("aptt-room-temperature", PaperSize.Letter)]
    [InlineData("routine-room-temperature", PaperSize.A4)]
    [InlineData("routine-room-temperature", PaperSize.Letter)]
    [InlineData("small-paired-sheet", PaperSize.A4)]
    public void The_run_list_of_every_day_names_each_waiting_tube_once(string name, PaperSize paper)
    {
        var files = ExampleStudy.OfFolder(name);
        var inputs = CheckedStudy.Of(files, DateTimeOffset.MinValue).Inputs!;
        foreach (var day in RunListPlan.DaysOf(inputs))
        {
            var request = BenchStudies.Request(paper, BenchPageKind.RunList) with { Date = day };
            var list = Assert
                .IsType<BenchPart.DueTubes>(Assert.Single(BenchStudies.Ready(files, request).Parts))
                .List;
            var tubes = list.Runs.SelectMany(run => run.Tubes).ToArray();
            var pdf = BenchStudies.Pdf(files, request);
            using var document = PdfDocument.Open(pdf);

            RequireReadable(pdf, paper);
            var text = string.Concat(document.GetPages().Select(PdfReading.Text));
            Assert.All(
                tubes,
                tube =>
                    Assert.Contains(
                        tube.Waiting.Tube ?? tube.Waiting.Specimen + "-__",
                        text,
                        StringComparison.Ordinal
                    )
            );
            Assert.Equal(
                tubes.Length,
                tubes
                    .DistinctBy(tube =>
                        (tube.Waiting.Specimen, tube.Waiting.Storage.Id, tube.Waiting.TimePoint)
                    )
                    .Count()
            );
            RequireInsideWindows(list, inputs.Protocol);
        }
    }

    /// <summary>Clock times and loads of the model page's first day, group by group as in the example's protocol of today: computed by hand from collection 07:05 and a time point of 6 h.</summary>
    [Fact]
    public void The_first_tube_of_the_example_falls_due_six_hours_after_its_collection()
    {
        var tube = Assert
            .IsType<BenchPart.DueTubes>(
                BenchStudies
                    .Ready(
                        ExampleStudy.Bytes,
                        BenchStudies.Request(PaperSize.A4, BenchPageKind.RunList) with
                        {
                            Date = new DateOnly(2026, 3, 2),
                        }
                    )
                    .Parts[0]
            )
            .List.Runs.SelectMany(run => run.Tubes)
            .First(tube => tube.Waiting.Tube == "N-001-B");

        Assert.Equal(
            ("07:05", "12:35", "13:05", "13:35"),
            (Time(tube.StartedAt), Time(tube.SpinFrom!.Value), Time(tube.From), Time(tube.Until))
        );
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void A_tube_spun_and_tested_as_printed_waited_as_the_protocol_asks(
        string name,
        PaperSize paper
    )
    {
        var ready = BenchStudies.Ready(
            BenchStudies.Of(name),
            BenchStudies.Request(paper, BenchPageKind.Draw)
        );
        var tubes = ready
            .Parts.OfType<BenchPart.Draw>()
            .Single()
            .Specimens.SelectMany(item => item.Tubes);

        foreach (var tube in tubes.Where(tube => tube.Spin.Moment == SpinMoment.Late))
        {
            // Spun at the earliest moment and tested at the last one.
            Assert.True(tube.Latest - tube.Spin.From!.Value <= tube.Storage!.SpinToTest);
            Assert.True(tube.Spin.By is null || tube.Spin.By > tube.Spin.From);
            Assert.True(tube.Spin.By is null || tube.Spin.By <= tube.Latest);
        }

        foreach (
            var run in tubes
                .Where(tube => !tube.Occasion.IsBaseline)
                .GroupBy(tube => (tube.Storage, tube.Occasion))
        )
        {
            Assert.Equal(
                Enumerable.Range(1, run.Count()),
                run.Select(tube => tube.RunOrder).Order()
            );
        }
    }

    [Fact]
    public void The_same_inputs_and_seed_give_the_same_bytes_and_the_seed_is_printed()
    {
        var files = BenchStudies.Of("aptt-room-temperature");
        var request = BenchStudies.Request() with { Seed = 20260302 };
        var pdf = BenchStudies.Pdf(files, request);
        using var document = PdfDocument.Open(pdf);

        Assert.Equal(pdf, BenchStudies.Pdf(files, request));
        Assert.NotEqual(pdf, BenchStudies.Pdf(files, request with { Seed = 20260303 }));
        Assert.Contains(
            "runorderdrawnwithseed20260302",
            PdfReading.Text(document.GetPage(1)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Draw_sheet_and_run_list_give_a_tube_the_same_times()
    {
        var files = ExampleStudy.Bytes;
        var list = Assert
            .IsType<BenchPart.DueTubes>(
                BenchStudies
                    .Ready(files, BenchStudies.Request(PaperSize.A4, BenchPageKind.RunList))
                    .Parts[0]
            )
            .List;
        var planned = DrawPlan
            .Of(
                CheckedStudy.Of(files, DateTimeOffset.MinValue).Inputs!.Protocol,
                [
                    .. list
                        .Runs.SelectMany(run => run.Tubes)
                        .Select(tube => new SpecimenCode(
                            tube.Waiting.Specimen,
                            tube.Waiting.Group.Id
                        ))
                        .Distinct(),
                ],
                list.Runs.Length,
                withSpare: true
            )
            .SelectMany(specimen => specimen.Tubes)
            .ToDictionary(tube => tube.Code);

        Assert.All(
            list.Runs.SelectMany(run => run.Tubes),
            tube =>
            {
                var offsets = planned[tube.Waiting.Tube!];
                Assert.Equal(offsets.Earliest, tube.From - tube.StartedAt);
                Assert.Equal(offsets.Latest, tube.Until - tube.StartedAt);
                Assert.Equal(offsets.Spin.From, tube.SpinFrom - tube.StartedAt);
            }
        );
    }

    /// <summary>The limits that are printed are those of the ready protocol.</summary>
    [Theory]
    [InlineData(
        "frozen-plasma-20",
        BenchPageKind.Frozen,
        "Freeze within 4 h of collection|at 36 to 38 °C for 5 min|test within 1 h of the thaw|under 10 × 10⁹/L (protocol)|twice at 1500 × g for 15 min|+4:00|36–38"
    )]
    [InlineData(
        "aptt-whole-blood-room-temperature",
        BenchPageKind.Draw,
        "a discard tube first, citrate or plain, never another additive|Only a blood culture may be drawn before|Invert 3 to 5 times|at 15 to 25 °C, never on ice|once at 1500 × g for 15 min"
    )]
    public void What_the_protocol_plans_of_the_handling_stands_on_the_sheet(
        string name,
        BenchPageKind kind,
        string said
    )
    {
        using var pdf = PdfDocument.Open(
            BenchStudies.Pdf(BenchStudies.Of(name), BenchStudies.Request(PaperSize.A4, kind))
        );
        var text = PdfReading.Text(pdf.GetPage(1));
        Assert.All(
            said.Split('|'),
            words =>
                Assert.Contains(
                    words.Replace(" ", "", StringComparison.Ordinal),
                    text,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void What_the_protocol_does_not_state_is_left_to_fill_in()
    {
        using var document = PdfDocument.Open(
            BenchStudies.Pdf(
                BenchStudies.Of("frozen-plasma"),
                BenchStudies.Request(PaperSize.A4, BenchPageKind.Frozen).Of("none", 4)
            )
        );

        var text = PdfReading.Text(document.GetPage(1));
        Assert.Contains("Freezewithin____hofcollection", text, StringComparison.Ordinal);
        Assert.Contains("testwithin____hofthethaw", text, StringComparison.Ordinal);
        Assert.Contains("+__:__", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_tube_there_is_no_run_list_and_the_answer_says_why()
    {
        var answer = BenchPages.Of(
            BenchStudies.Of("aptt-whole-blood-room-temperature"),
            BenchStudies.Request(PaperSize.A4, BenchPageKind.RunList)
        );

        Assert.Contains(
            "collection time",
            Assert.IsType<BenchPagesAnswer.NotFitting>(answer).Why,
            StringComparison.Ordinal
        );
    }

    private static void RequireInsideWindows(RunList list, StudyProtocol protocol)
    {
        foreach (var run in list.Runs)
        {
            foreach (var tube in run.Tubes)
            {
                Assert.Equal(
                    run.TimePoint.Delay - protocol.Tolerance.Early,
                    tube.From - tube.StartedAt
                );
                Assert.Equal(
                    run.TimePoint.Delay + protocol.Tolerance.LateAt(run.TimePoint),
                    tube.Until - tube.StartedAt
                );
            }

            Assert.All(
                run.Loads,
                load =>
                    Assert.True(
                        load.Count == 1 || load.Until - load.From >= TimeSpan.FromMinutes(10)
                    )
            );
        }

        Assert.Equal(
            list.Runs.SelectMany(run => run.Tubes).Select(tube => tube.From).Order(),
            list.Runs.SelectMany(run => run.Tubes).Select(tube => tube.From)
        );
    }

    /// <summary>Every letter stands inside the margins, and none over another.</summary>
    internal static void RequireReadable(byte[] pdf, PaperSize paper)
    {
        using var document = PdfDocument.Open(pdf);
        var (width, height) = paper == PaperSize.A4 ? (210.0, 297.0) : (215.9, 279.4);
        foreach (var page in document.GetPages())
        {
            Assert.Equal(
                new[] { width, height }.Order(),
                new[]
                {
                    page.Width / PointsPerMillimeter,
                    page.Height / PointsPerMillimeter,
                }.Order(),
                (expected, found) => Math.Abs(expected - found) < 0.05
            );
            Assert.Empty(PdfReading.Overlaps(page));
            Assert.All(page.Letters, letter => RequireInside(letter, page));
        }
    }

    private static void RequireInside(Letter letter, Page page)
    {
        const double least = 5 * PointsPerMillimeter;
        var box = letter.BoundingBox;
        Assert.True(
            box.Left >= least
                && box.Right <= page.Width - least
                && box.Bottom >= least
                && box.Top <= page.Height - least,
            string.Create(
                CultureInfo.InvariantCulture,
                $"page {page.Number}: {letter.Value} at {box.Left:0}, {box.Bottom:0}"
            )
        );
    }

    private static string Time(DateTimeOffset time) =>
        time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
