using StabilityStudy.Pipeline.Proving;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Pipeline.Versions;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;
using static StabilityStudy.Pipeline.Verification.PartOutcome;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>
/// Signed reports of every released version, made once by that version (<c>tests/make-release.sh</c>) and never again: this
/// version verifies them. Their locks are dated by a computer's clock alone, so that their last part is never more than not fully checked.
/// </summary>
[Trait("lane", "slow")]
public sealed class ReleasedReportsTests
{
    private static readonly string s_folder = Path.Combine(
        RepositoryFile.Root,
        "tests/ReferenceData/releases"
    );

    /// <summary>The first version that writes protocol documents.</summary>
    private static readonly Version s_firstWithDocuments = new(0, 5, 0);

    /// <summary>The first version that writes notices.</summary>
    private static readonly Version s_firstWithNotices = new(0, 6, 0);

    [Fact]
    public void Every_released_version_has_a_signed_report_of_each_example_and_each_still_verifies()
    {
        string[] examples =
        [
            .. Directory
                .GetDirectories(Path.Combine(RepositoryFile.Root, "example-studies"))
                .Where(folder => File.Exists(Path.Combine(folder, "protocol.toml")))
                .Select(folder => Path.GetFileName(folder) + ".pdf")
                .Order(StringComparer.Ordinal),
        ];
        foreach (var file in Directory.GetFiles(ReleasedLists, "*.txt"))
        {
            var version = Path.GetFileNameWithoutExtension(file);

            Assert.True(ReleasedVersion.TryFind(version, out _), version);
            if (Version.Parse(version) >= s_firstWithNotices)
            {
                RequireNotices(version);
            }

            foreach (var example in examples)
            {
                var found = ReportVerifier.Verify(
                    File.ReadAllBytes(Path.Combine(s_folder, version, example)),
                    new VerificationOptions(Anchors(version), [])
                );
                Assert.Equal(ReleasedReports.Known(version), EvidenceExample.Outcomes(found));
                if (Version.Parse(version) >= s_firstWithDocuments)
                {
                    RequireDocument(version, example);
                }
            }
        }
    }

    private static void RequireDocument(string version, string example)
    {
        var found = ReportVerifier.Verify(
            File.ReadAllBytes(
                Path.Combine(s_folder, version, Path.ChangeExtension(example, ".protocol.pdf"))
            ),
            new VerificationOptions(Anchors(version), [])
        );
        Assert.Equal(DocumentKind.Protocol, found.Document);
        Assert.Equal([Holds, Holds], EvidenceExample.Outcomes(found)[..2]);
        Assert.NotEqual(Fails, found.Outcome);
    }

    private static void RequireNotices(string version)
    {
        foreach (var name in new[] { "withdrawn", "ended" })
        {
            var found = ReportVerifier.Verify(
                File.ReadAllBytes(
                    Path.Combine(s_folder, version, $"small-paired-sheet.{name}.pdf")
                ),
                new VerificationOptions(Anchors(version), [])
            );
            Assert.NotNull(found.Notice);
            Assert.Equal([Holds, Holds], EvidenceExample.Outcomes(found)[..2]);
            Assert.NotEqual(Fails, found.Outcome);
        }
    }

    private static string ReleasedLists =>
        Path.Combine(RepositoryFile.Root, "src/StabilityStudy.Pipeline/Versions/Released");

    private static TrustAnchors Anchors(string version) =>
        EvidenceExample.Anchors([
            .. Directory
                .GetFiles(Path.Combine(s_folder, version, "trust"))
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllText),
        ]);
}
