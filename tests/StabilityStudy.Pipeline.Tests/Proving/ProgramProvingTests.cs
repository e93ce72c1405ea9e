using StabilityStudy.Pipeline.Proving;
using StabilityStudy.Pipeline.Proving.Published;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Proving;
using StabilityStudy.Reporting.Tests.Pdf;
using StabilityStudy.Reporting.Text;
using UglyToad.PdfPig;

namespace StabilityStudy.Pipeline.Tests.Proving;

/// <summary>The program holds itself to what is known, and tells what does not agree.</summary>
[Trait("lane", "slow")]
public sealed class ProgramProvingTests
{
    private static readonly Lazy<ProgramProof> s_proof = new(() => ProgramProving.Run(_ => { }));

    private static readonly ProofRun s_run = new(
        "stability-study 1.2.3, decision rules 4, commit 0123456789",
        "An operating system 5",
        "Arm64",
        "a run time, native program",
        "nl-BE",
        new DateTimeOffset(2030, 5, 6, 7, 8, 9, TimeSpan.FromHours(-4)),
        "America/Toronto",
        "Lab Scientist One"
    );

    public static TheoryData<PaperSize> Papers => [.. Enum.GetValues<PaperSize>()];

    [Fact]
    public void Everything_agrees_here()
    {
        Assert.All(
            s_proof.Value.Figures,
            item => Assert.Equal((Agreement.Agrees, item.Name), (item.Agreement, item.Name))
        );
        Assert.True(s_proof.Value.Agrees);
    }

    [Fact]
    public void Every_published_data_set_and_every_release_is_in_it()
    {
        var cases = string.Concat(
            Directory
                .GetFiles(
                    Path.Combine(
                        RepositoryFile.Root,
                        "src/StabilityStudy.Pipeline/Proving/Published"
                    )
                )
                .Select(File.ReadAllText)
        );
        var references = Path.Combine(RepositoryFile.Root, "tests/ReferenceData");

        Assert.All(
            Directory
                .GetFiles(Path.Combine(references, "published"), "*.csv")
                .Select(Path.GetFileNameWithoutExtension)
                // Files of one kind are named by what follows the beginning that they share.
                .Select(name =>
                    name!.StartsWith("shapiro_wilk_scipy_n20", StringComparison.Ordinal)
                        ? name[..^1]
                    : name.StartsWith("nist_no", StringComparison.Ordinal) ? name
                    : name.Replace("nist_", "", StringComparison.Ordinal)
                ),
            name => Assert.Contains($"\"{name}\"", cases, StringComparison.Ordinal)
        );
        Assert.Equal(
            Directory
                .GetDirectories(Path.Combine(references, "releases"))
                .Select(folder => Version.Parse(Path.GetFileName(folder)))
                .Order(),
            ReleasedReports.Versions.Select(Version.Parse)
        );
    }

    [Theory]
    [InlineData("0.46", 0.465, 0.006, false, Agreement.Agrees)]
    [InlineData("0.46", 0.47, 0.006, false, Agreement.Differs)]
    [InlineData("-79.7", 79.7, 0.006, false, Agreement.Differs)]
    [InlineData("26/7", 3.7142857142857144, 0, false, Agreement.Agrees)]
    [InlineData("200", 201.0, 0, false, Agreement.Differs)]
    [InlineData("200", 201.0, 0.01, true, Agreement.Agrees)]
    [InlineData("-200", -201.0, 0.001, true, Agreement.Differs)]
    [InlineData("200", double.NaN, 0.01, true, Agreement.Differs)]
    [InlineData("200", null, 0.01, true, Agreement.Differs)]
    public void A_figure_agrees_within_its_tolerance_alone(
        string expected,
        double? found,
        double amount,
        bool isShare,
        Agreement agreement
    )
    {
        var figure = new Tolerance(amount, isShare).Figure("a figure", expected, found);

        Assert.Equal(agreement, figure.Agreement);
        Assert.Equal(expected, figure.Expected);
    }

    [Theory]
    [InlineData(0, false, "equal")]
    [InlineData(0.05, false, "within 0.05")]
    [InlineData(0.0015, false, "within 0.0015")]
    [InlineData(6e-7, false, "within 6e-7")]
    [InlineData(1e-14, true, "within 1e-14 of it")]
    public void A_tolerance_is_told_in_words(double amount, bool isShare, string words) =>
        Assert.Equal(words, new Tolerance(amount, isShare).Figure("a figure", "1", 1).Tolerance);

    [Fact]
    public void A_kept_report_that_was_changed_is_told()
    {
        var version = ReleasedReports.Versions[^1];
        var changed = ChangedByte.Of(ReleasedReports.Of(version));

        Assert.Equal(5, changed.Length);
        Assert.All(
            changed,
            item =>
                Assert.Equal(
                    1,
                    ReleasedReports
                        .Of(version)
                        .ToArray()
                        .Zip(item.Report.ToArray())
                        .Count(pair => pair.First != pair.Second)
                )
        );
        Assert.Contains(
            new ProofFigure(
                "Who signed, and do the signatures hold?",
                "holds",
                "fails",
                "equal",
                Agreement.Differs
            ),
            ReleasedReports.Verify(version, changed[0].Report)
        );
    }

    [Fact]
    public void A_changed_byte_lies_where_its_words_say()
    {
        var report = ReleasedReports.Of(ReleasedReports.Versions[^1]);
        Assert.True(FirstRevision.TryRead(report, out var drawn, out _));
        int[] places =
        [
            .. ChangedByte
                .Of(report)
                .Select(item => report.Span.CommonPrefixLength(item.Report.Span)),
        ];

        // Before anybody signed, twice; then in what was added, the last signature after the first.
        Assert.All(places[..2], place => Assert.InRange(place, 0, drawn.Bytes.Length - 1));
        Assert.All(places[2..], place => Assert.True(place >= drawn.Bytes.Length));
        Assert.True(places[2] < places[3] && places[3] < places[4]);
        // A byte of a file that the report carries: the file comes out otherwise or not at all.
        Assert.False(
            FirstRevision.TryRead(ChangedByte.Of(report)[1].Report, out var other, out _)
                && drawn.Files.All(file =>
                    other.Files[file.Key].Span.SequenceEqual(file.Value.Span)
                )
        );
    }

    /// <summary>Run with UPDATE_GOLDEN=1 where pages change or a release was kept.</summary>
    [Fact]
    public void The_report_is_drawn_with_the_kept_bytes() =>
        RepositoryFile.RequireSame(
            "src/StabilityStudy.Pipeline/Proving/drawn-report.sha256",
            DrawnReportProof.Sha256() + "\n"
        );

    [Fact]
    public void A_culture_that_the_computer_lacks_is_not_checked_and_no_difference()
    {
        var before = CultureInfo.CurrentCulture;

        var figures = DrawnReportProof.Under("zz-nowhere", "a digest", []);

        Assert.Equal(2, figures.Length);
        Assert.All(figures, figure => Assert.Equal(Agreement.NotChecked, figure.Agreement));
        Assert.Equal(before, CultureInfo.CurrentCulture);
        var proof = new ProgramProof([new("", "", [new("", "", "", figures)])]);
        Assert.True(proof.Agrees);
        Assert.Equal(
            "Every figure that was checked agrees: 0 of 2. 2 could not be checked on this computer.",
            ProofWords.Outcome(proof)
        );
    }

    [Fact]
    public void Another_digit_under_a_culture_is_told()
    {
        var (first, others) = (s_proof.Value.Parts[0].Cases[0], s_proof.Value.Parts[0].Cases[1..]);
        var wrong = first with
        {
            Figures = [first.Figures[0] with { Found = "199" }, .. first.Figures[1..]],
        };

        var figures = DrawnReportProof.Under("de-DE", "another digest", [wrong, .. others]);

        Assert.All(figures, figure => Assert.Equal(Agreement.Differs, figure.Agreement));
        Assert.Equal("1", figures[1].Found);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void The_document_has_every_figure_and_where_and_when_it_was_run(PaperSize paper)
    {
        var pages = Pages(s_proof.Value, paper);
        var text = string.Concat(pages);

        Assert.All(
            s_proof.Value.Parts.SelectMany(part => part.Cases),
            item => RequireAll(text, item.Title, item.Source, item.Reason)
        );
        Assert.All(
            s_proof.Value.Figures,
            figure =>
                RequireAll(
                    text,
                    figure.Name,
                    Minus(figure.Expected),
                    Minus(figure.Found),
                    figure.Tolerance
                )
        );
        RequireAll(
            pages[0],
            [
                .. s_run.Facts.SelectMany(fact => new[] { fact.Name, fact.Value }),
                ProofWords.Outcome(s_proof.Value),
                "does not replace the laboratory's own verification",
                "Reviewed by",
                "Signature",
            ]
        );
    }

    [Fact]
    public void The_same_result_gives_the_same_bytes() =>
        Assert.True(
            ProgramProving
                .Pdf(s_proof.Value, s_run, PaperSize.A4)
                .Span.SequenceEqual(ProgramProving.Pdf(s_proof.Value, s_run, PaperSize.A4).Span)
        );

    [Fact]
    public async Task The_document_keeps_the_rules_of_the_archive() =>
        Assert.Empty(
            await ArchiveRules.BrokenBy(
                ProgramProving.Pdf(s_proof.Value, s_run, PaperSize.A4).ToArray()
            )
        );

    [Fact]
    public void What_does_not_agree_stands_on_page_1()
    {
        var proof = new ProgramProof([
            new(
                "A part",
                "Explained.",
                [
                    new(
                        "A case",
                        "a book",
                        "a reason",
                        [
                            Tolerance.Within(0.05).Figure("right", "1.5", 1.52),
                            Tolerance.Within(0.05).Figure("wrong", "-2.1", -2.3),
                        ]
                    ),
                ]
            ),
        ]);

        Assert.False(proof.Agrees);
        RequireAll(
            Pages(proof, PaperSize.A4)[0],
            "1 of 2 figures DO NOT AGREE",
            "What does not agree",
            "A case",
            "wrong−2.1−2.3within 0.05DIFFERS",
            "1 of 2"
        );
        Assert.Contains(
            "DO NOT AGREE",
            TextDrawing.Draw(ProofDocument.Build(proof, s_run, PaperSize.A4), 80),
            StringComparison.Ordinal
        );
    }

    private static string[] Pages(ProgramProof proof, PaperSize paper)
    {
        using var document = PdfDocument.Open(ProgramProving.Pdf(proof, s_run, paper).ToArray());
        return [.. document.GetPages().Select(PdfReading.Text)];
    }

    private static string Minus(string figure) =>
        figure.StartsWith('-') ? "−" + figure[1..] : figure;

    private static void RequireAll(string text, params string[] wanted) =>
        Assert.All(
            wanted,
            words =>
                Assert.Contains(PdfReading.WithoutSpaces(words), text, StringComparison.Ordinal)
        );
}
