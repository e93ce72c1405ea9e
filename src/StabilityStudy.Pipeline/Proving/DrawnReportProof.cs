using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Proving.Published;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Pipeline.Proving;

/// <summary>
/// The study inside the newest signed report, analyzed and drawn on this computer: the PDF has the same bytes everywhere. It carries the
/// analysis.json of that report, because the last digits of a double may be those of another processor; the figures themselves are
/// compared where the report is verified.
/// </summary>
internal static class DrawnReportProof
{
    /// <summary>Cultures that break formatting most often: decimal commas, other digits and calendars, a dotless i.</summary>
    private static readonly ImmutableArray<string> s_cultures = ["de-DE", "ar-SA", "tr-TR"];

    private const string Kept = "drawn-report.sha256";
    private const int Group = 16;

    /// <summary>Draws it as this computer is set and under each culture, and computes the published cases again there.</summary>
    /// <param name="published">The published cases as this computer is set.</param>
    public static ImmutableArray<ProofCase> Draw(ImmutableArray<ProofCase> published)
    {
        var expected = Encoding.ASCII.GetString(ProofResource.Bytes(Kept)).Trim();
        return
        [
            new ProofCase(
                $"Report of the study of release {ReleasedReports.Versions[^1]}",
                "SHA-256 of the PDF, kept with the sources of this version.",
                "none: fonts, figures, numbers and compression are part of the program and not of the computer.",
                [ProofFigure.Equal("SHA-256 of the PDF", expected, Sha256())]
            ),
            new ProofCase(
                "The same under other cultures of the user",
                "as before; and the published figures with every digit, as found above.",
                "none: no number depends on the language or region that is set on a computer.",
                [.. s_cultures.SelectMany(name => Under(name, expected, published))]
            ),
        ];
    }

    /// <summary>The digest of the report as this program draws it, in groups as a person compares them; what stands against it where there is none.</summary>
    internal static string Sha256()
    {
        var report = ReleasedReports.Of(ReleasedReports.Versions[^1]);
        if (!AttachedStudy.TryRead(report, out var attached, out var fault))
        {
            return fault;
        }

        var intake = StudyIntake.ReadCanonical(
            attached.Inputs,
            isOfOtherVersion: attached.Stated.ToolVersion != ToolVersion.Current
        );
        return Recomputation.Of(attached).Recomputed is { } analysis && intake.TryGet(out var study)
            ? InGroups(
                StudyPipeline.Render(
                    new AnalyzedStudy(analysis, AttachedFiles.Sources(attached.Inputs, study)),
                    PaperSize.A4,
                    full: false,
                    attached.AnalysisBytes
                )
            )
            : "no report: the study inside cannot be analyzed";
    }

    private static string InGroups(RenderedReport report) =>
        string.Join(
            ' ',
            Convert
                .ToHexStringLower(SHA256.HashData(report.Pdf.Span))
                .Chunk(Group)
                .Select(digits => new string(digits))
        );

    /// <summary>Computes and draws under a culture, which this computer need not have.</summary>
    internal static ImmutableArray<ProofFigure> Under(
        string name,
        string expected,
        ImmutableArray<ProofCase> published
    )
    {
        var pdf = $"{name}, SHA-256 of the PDF";
        var figures = $"{name}, published figures with another digit";
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name, predefinedOnly: true);
            var again = PublishedCases.Compute().SelectMany(item => item.Figures);
            var other = published
                .SelectMany(item => item.Figures)
                .Zip(again)
                .Count(pair => pair.First != pair.Second);
            return
            [
                ProofFigure.Equal(pdf, expected, Sha256()),
                ProofFigure.Equal(figures, "0", other.ToString(CultureInfo.InvariantCulture)),
            ];
        }
        catch (CultureNotFoundException)
        {
            return [NotChecked(pdf, expected), NotChecked(figures, "0")];
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static ProofFigure NotChecked(string name, string expected) =>
        new(name, expected, "this computer has no such culture", "equal", Agreement.NotChecked);
}
