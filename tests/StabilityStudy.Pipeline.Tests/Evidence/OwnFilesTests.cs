using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;
using StabilityStudy.Files.Tests.OwnTables;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>What the program really found in the laboratory's own files stands in a report that is verified; what it cannot have found does not (<see cref="Forging.ForgedStudies"/>).</summary>
[Trait("lane", "slow")]
public sealed class OwnFilesTests
{
    [Fact]
    public void Rows_given_twice_unused_columns_and_unread_tables_stand()
    {
        var results = ExampleStudy.Text(ShortStudy.Bytes, ExampleStudy.Results);
        var rows = results.Split('\n', 2)[1];
        var controls = ExampleStudy.Text(ShortStudy.Bytes, ExampleStudy.Controls);
        var study = ShortStudy
            .Bytes.WithText(
                ExampleStudy.Results,
                // Without a column that may be missing, and with its name misspelt, all rows once and once more.
                (results + rows + rows).Replace(",remark\n", ",remarks\n", StringComparison.Ordinal)
            )
            .WithText(
                ExampleStudy.Controls,
                controls + controls.TrimEnd('\n').Split('\n')[^1] + "\n"
            )
            .WithText(
                ExampleStudy.Specimens,
                WithColumn(ExampleStudy.Text(ShortStudy.Bytes, ExampleStudy.Specimens), "weather")
            )
            .WithText("notes of the week.csv", "day,what\nMonday,nothing\n");

        Follows(
            study,
            "column-misspelt",
            "column-not-used",
            "duplicate-row",
            "file-not-read",
            "And "
        );
    }

    [Fact]
    public void A_column_left_aside_for_another_and_pairs_given_twice_stand()
    {
        var sheet = ExampleStudy.Text(EvidenceExample.StudyFiles, "pairs.csv");
        var renamed = sheet.Replace("baseline_result", "first_result", StringComparison.Ordinal);
        var twice = renamed + renamed.TrimEnd('\n').Split('\n')[^1] + "\n";
        var study = EvidenceExample
            .StudyFiles.WithText("pairs.csv", WithColumn(twice, "baseline_result"))
            .Edited(
                StudyBytes.FactsName,
                "file = \"pairs.csv\"",
                "file = \"pairs.csv\"\ncolumns = { baseline_result = \"first_result\" }"
            );

        Follows(study, "own-column-left-aside", "duplicate-row");
    }

    [Fact]
    public void Words_read_as_others_and_a_revision_that_the_record_does_not_know_stand()
    {
        var study = EvidenceExample
            .StudyFiles.Edited(
                StudyBytes.FactsName,
                "file = \"pairs.csv\"",
                "file = \"pairs.csv\"\nvalues = { delayed_result = { \"Gerinnsel\" = \"CLOT\" } }"
            )
            .Edited(
                StudyBytes.FactsName,
                "[clock]",
                "[revision]\nnumber = 2\nreplaces = \"3f09c2d41b7a5e68\"\nreason = \"a word was corrected\"\n\n[clock]"
            )
            .With(
                StudyRecord.Name,
                StudyRecord.Next(
                    default,
                    new RecordEntry(
                        RecordAction.Report,
                        EvidenceExample.Now,
                        "LS1",
                        "stability-study 0",
                        [new FileHash("protocol.toml", new string('a', 64))],
                        []
                    )
                )
            );

        Follows(study, "revision-not-recorded");

        var facts = ExampleStudy.Analyze(study).Analysis.Facts;
        Assert.Equal(2, facts.Revision?.Number);
        Assert.Equal("Gerinnsel", Assert.Single(Assert.Single(facts.OwnFiles).Words).Written);
    }

    [Fact]
    public void Workbooks_with_hidden_rows_and_flags_in_two_files_stand()
    {
        var lines = ExampleStudy
            .Text(ShortStudy.Bytes, ExampleStudy.Results)
            .TrimEnd('\n')
            .Split('\n');
        byte[] Book(IEnumerable<string> rows) =>
            new WorkbookBytes()
                .Sheet(
                    "Results",
                    rows.Prepend(lines[0])
                        .Select(
                            (row, i) =>
                                WorkbookBytes.Row.Of(row.Split(',')) with
                                {
                                    IsHidden = i == 2,
                                }
                        )
                )
                .ToArray();

        var half = lines.Length / 2;
        var without = new StudyBytes(ShortStudy.Bytes.Files.Remove(ExampleStudy.Results));
        var study = without
            .With("results-1.xlsx", Book(lines[1..half]))
            .With("results-2.xlsx", Book([.. lines[half..], lines[^1]]))
            .WithText(
                StudyBytes.FactsName,
                ExampleStudy
                    .Text(without, StudyBytes.FactsName)
                    .Replace(
                        "results = \"results.csv\"",
                        "results = \"results-1.xlsx\"",
                        StringComparison.Ordinal
                    )
                    + "\n[read.results]\nmore_files = [\"results-2.xlsx\"]\nvalues = { flag = { E12 = \"failed\" } }\n"
            );

        Follows(study, "hidden-cells", "duplicate-row");

        var files = ExampleStudy
            .Analyze(study)
            .Analysis.Identity.RawFiles.Select(file => file.Name);
        Assert.Contains("results-2.xlsx", files);
    }

    private static string WithColumn(string csv, string name) =>
        string.Join(
            '\n',
            csv.TrimEnd('\n').Split('\n').Select((row, i) => row + (i == 0 ? $",{name}" : ",1"))
        ) + "\n";

    /// <summary>The study has these queries, and its report holds.</summary>
    private static void Follows(StudyBytes files, params string[] queries)
    {
        var analyzed = ExampleStudy.Analyze(files);
        var found = string.Join(
            '\n',
            analyzed.Analysis.Queries.Select(query => $"{query.Code}: {query.Message}")
        );
        foreach (var query in queries)
        {
            Assert.Contains(query, found, StringComparison.Ordinal);
        }

        Assert.True(
            AttachedStudy.TryRead(EvidenceExample.Report(files), out var study, out var fault),
            fault
        );
        var recomputed = Recomputation.Of(study);
        Assert.Equal("", string.Join('\n', recomputed.Faults));
        Assert.Equal(PagesOutcome.Same, recomputed.Pages);
    }
}
