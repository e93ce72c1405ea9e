using System.Text;
using System.Text.Json.Nodes;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Json.Forms;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Files.Tests;

/// <summary>That a report replaces an earlier one: [revision] of study.toml.</summary>
public sealed class RevisionTests
{
    private const string Stated = """"
        [revision]
        number = 2
        replaces = "3f09c2d41b7a5e68"
        reason = "lot of the reagent corrected"

        [files]
        """";

    private static readonly ImmutableArray<FileHash> s_first =
    [
        new("protocol.toml", "p1"),
        new("results.csv", "d1"),
    ];

    [Fact]
    public void Number_replaced_report_and_reason_are_read_and_written()
    {
        var study = CanonicalTests.Read(GoodStudy.Edited("study.toml", "[files]", Stated));

        Assert.Equal(
            new ReportRevision(2, "3f09c2d41b7a5e68", "lot of the reagent corrected"),
            study.Inputs.Facts.Revision
        );
        var written = JsonNode.Parse(Written(study.Inputs.Facts))!["revision"]!;
        Assert.Equal(2, (int)written["number"]!);
        Assert.Equal("3f09c2d41b7a5e68", (string?)written["replaces"]);
        Assert.Equal("lot of the reagent corrected", (string?)written["reason"]);
    }

    [Fact]
    public void Without_a_revision_nothing_of_it_is_written_and_the_canonical_data_are_the_same()
    {
        var first = CanonicalTests.Read(GoodStudy.Bytes);
        var revised = CanonicalTests.Read(GoodStudy.Edited("study.toml", "[files]", Stated));

        Assert.Null(first.Inputs.Facts.Revision);
        Assert.DoesNotContain("revision", Written(first.Inputs.Facts), StringComparison.Ordinal);
        Assert.DoesNotContain("ownFiles", Written(first.Inputs.Facts), StringComparison.Ordinal);
        Assert.Equal(
            first.Canonical.Files.Select(file => file.Sha256),
            revised.Canonical.Files.Select(file => file.Sha256)
        );
        Assert.Equal(first.Identity.DataSha256, revised.Identity.DataSha256);
        Assert.NotEqual(first.Identity.InputDigest, revised.Identity.InputDigest);
    }

    [Fact]
    public void A_report_of_the_record_is_known_by_the_start_of_its_input_digest()
    {
        var digest = InputDigest.Compute(s_first);

        Assert.Empty(RevisedReports.Check(Record(), Revision(digest[..16])));
        Assert.Empty(RevisedReports.Check(Record(), Revision(digest)));
    }

    [Fact]
    public void A_report_that_the_record_does_not_name_is_a_query()
    {
        var query = Assert.Single(RevisedReports.Check(Record(), Revision("3f09c2d41b7a5e68")));

        Assert.Equal("revision-not-recorded", query.Code);
        Assert.Contains("3f09c2d41b7a5e68", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_record_of_reports_or_without_a_revision_nothing_is_asked()
    {
        Assert.Empty(RevisedReports.Check(default, Revision("3f09c2d41b7a5e68")));
        Assert.Empty(RevisedReports.Check(Record(), null));
        Assert.Empty(
            RevisedReports.Check(
                StudyRecord.Next(default, Entry(RecordAction.Analyze)),
                Revision("3f09c2d41b7a5e68")
            )
        );
    }

    [Fact]
    public void The_record_in_the_folder_is_asked()
    {
        var files = GoodStudy
            .Edited("study.toml", "[files]", Stated)
            .With(StudyRecord.Name, Record());

        Assert.Contains(
            StudyIntake.Read(files).Queries,
            query => query.Code == "revision-not-recorded" && query.Source.File == "study.toml"
        );
    }

    [Fact]
    public void A_revision_that_only_one_of_two_files_has_is_a_difference()
    {
        var revised = CanonicalTests
            .Read(GoodStudy.Edited("study.toml", "[files]", Stated))
            .Inputs.Facts;
        var first = revised with { Revision = null };

        Assert.Contains(
            "revision",
            Assert.Single(Faults(revised, first)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "revision",
            Assert.Single(Faults(first, revised)),
            StringComparison.Ordinal
        );
        Assert.Empty(Faults(revised, revised));
        Assert.Empty(Faults(first, first));
    }

    private static ImmutableArray<string> Faults(StudyFacts stated, StudyFacts computed)
    {
        using var one = System.Text.Json.JsonDocument.Parse(Written(stated));
        using var two = System.Text.Json.JsonDocument.Parse(Written(computed));
        var comparison = new AnalysisComparison(
            ComparedVersion.Same,
            _ => true,
            _ => true,
            _ => true
        );
        FactsForms.StudyFactsForm.Compare(one.RootElement, two.RootElement, "facts", comparison);
        return comparison.Differences.Faults;
    }

    private static string Written(StudyFacts facts) =>
        Encoding.UTF8.GetString(
            AnalysisJson.Write(json => FactsForms.StudyFactsForm.Write(json, facts))
        );

    private static ReportRevision Revision(string replaces) => new(2, replaces, "corrected");

    private static ReadOnlyMemory<byte> Record() =>
        StudyRecord.Next(default, Entry(RecordAction.Report));

    private static RecordEntry Entry(string action) =>
        new(
            action,
            new DateTimeOffset(2026, 6, 1, 9, 0, 0, TimeSpan.Zero),
            "LS1",
            "stability-study 0",
            s_first,
            [new FileHash("report.pdf", "r1")]
        );
}
