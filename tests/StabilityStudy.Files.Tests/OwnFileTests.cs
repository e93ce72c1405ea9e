using System.Text;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>What a report tells of how the laboratory's own files were read.</summary>
public sealed class OwnFileTests
{
    private const string Layout = """"

        [read.specimens]
        values = { subject = { "DOE JANE" = "X-01" }, clot = { "nein" = "no", "ja" = "yes" } }

        [read.results]
        decimal = ","
        date_format = "dd.MM.yyyy HH:mm"
        delimiter = ";"
        columns = { tested_at = "Gemessen", result = "Ergebnis" }
        values = { unit = { "sec" = "s" }, result = { "Gerinnsel" = "CLOT" }, time_point = { "T6" = "6 h", "T0" = "baseline" }, operator = { "J. Roe" = "P1" } }
        constants = { analyte = "aPTT" }

        """";

    private const string Results = """"
        specimen;tube;time_point;Gemessen;Ergebnis;unit;operator
        S-001;A;T0;02.03.2026 07:50;31,2;sec;J. Roe
        S-001;B;T6;02.03.2026 13:05;Gerinnsel;sec;J. Roe

        """";

    private static readonly StudyBytes s_files = GoodStudy
        .Bytes.With("study.toml", GoodStudy.Utf8(GoodStudy.Facts + Layout))
        .With("results.csv", GoodStudy.Utf8(Results));

    [Fact]
    public void Words_headers_and_constants_stand_in_the_order_of_files_columns_and_words()
    {
        var own = CanonicalTests.Read(s_files).Inputs.Facts.OwnFiles;

        Assert.Equal(["specimens.csv", "results.csv"], own.Select(file => file.Name));
        Assert.Equal(
            [new ReadWord("clot", "ja", "yes"), new ReadWord("clot", "nein", "no")],
            own[0].Words
        );
        Assert.Equal(
            [
                new ReadWord("time_point", "T0", "baseline"),
                new ReadWord("time_point", "T6", "6 h"),
                new ReadWord("result", "Gerinnsel", "CLOT"),
                new ReadWord("unit", "sec", "s"),
            ],
            own[1].Words
        );
        Assert.Equal(
            [new ReadHeader("tested_at", "Gemessen"), new ReadHeader("result", "Ergebnis")],
            own[1].Headers
        );
        Assert.Equal([new StatedConstant("analyte", "aPTT")], own[1].Constants);
        Assert.Equal("dd.MM.yyyy HH:mm", own[1].DateFormat);
        Assert.True(own[1].HasDecimalComma);
    }

    [Fact]
    public void Entries_that_may_name_persons_are_counted_and_not_repeated()
    {
        var own = CanonicalTests.Read(s_files).Inputs.Facts.OwnFiles;

        Assert.Equal([new ReplacedCodes("subject", 1)], own[0].Codes);
        Assert.Equal([new ReplacedCodes("operator", 1)], own[1].Codes);
        Assert.DoesNotContain(
            own.SelectMany(file => file.Words),
            word => word.Written is "DOE JANE" or "J. Roe"
        );
    }

    [Fact]
    public void It_is_found_again_from_the_canonical_files()
    {
        var first = CanonicalTests.Read(s_files);
        var attached = first.Canonical.Files.Aggregate(
            s_files,
            (all, file) => all.With(file.Name, file.Bytes)
        );
        Assert.True(
            StudyIntake.ReadCanonical(attached, isOfOtherVersion: false).TryGet(out var again)
        );

        Assert.Equal(Told(first), Told(again));
        Assert.Equal(Told(first), Told(CanonicalTests.Read(attached)));
    }

    [Fact]
    public void A_sheet_of_pairs_is_told_under_its_own_name()
    {
        var folder = Path.Combine(RepositoryFile.Root, "example-studies", "small-paired-sheet");
        var file = Assert.Single(
            CanonicalTests.Read(ExampleStudyTests.Read(folder)).Inputs.Facts.OwnFiles
        );

        Assert.Equal("pairs.csv", file.Name);
        Assert.Empty(file.Words);
        Assert.Contains(new StatedConstant("origin", "native"), file.Constants);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n[read.results]\ndelimiter = \",\"\nencoding = \"utf-8\"\n")]
    public void Where_nothing_is_mapped_nothing_is_told(string layout) =>
        Assert.Empty(
            CanonicalTests
                .Read(GoodStudy.Bytes.With("study.toml", GoodStudy.Utf8(GoodStudy.Facts + layout)))
                .Inputs.Facts.OwnFiles
        );

    private static string Told(StudyIntakeResult study) =>
        Encoding.UTF8.GetString(
            Json.AnalysisJson.Write(json =>
                Json.Forms.FactsForms.StudyFactsForm.Write(json, study.Inputs.Facts)
            )
        );
}
