using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Formats;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Tests;

public sealed class FormatsDocumentTests
{
    [Fact]
    public void FORMATS_md_is_that_of_the_program()
    {
        RepositoryFile.RequireSame(
            "src/StabilityStudy.Files/FORMATS.md",
            FormatsDocument.ToMarkdown()
        );
    }

    [Fact]
    public void The_bound_of_a_number_stands_beside_its_key()
    {
        Assert.Contains(
            "| `analyte.decimals` | see meaning | decimals of a reported result; not with categories | a whole number from 0 to 6 | `decimals = 1` |",
            FormatsDocument.ToMarkdown(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("specimens")]
    [InlineData("results")]
    [InlineData("controls")]
    [InlineData("pairs")]
    public void Every_column_has_a_note_and_every_needed_one_is_called_so(string file)
    {
        var (columns, notes) = file switch
        {
            "specimens" => (CsvColumns.Specimens, ColumnNotes.Specimens),
            "results" => (CsvColumns.Results, ColumnNotes.Results),
            "controls" => (CsvColumns.Controls, ColumnNotes.Controls),
            _ => (CsvColumns.Pairs, ColumnNotes.Pairs),
        };

        Assert.Equal(columns.All, notes.Select(note => note.Path));
        Assert.Equal(
            columns.Required,
            notes.Where(note => note.Need == Need.Required).Select(note => note.Path)
        );
    }

    [Fact]
    public void A_missing_key_shows_a_line_to_write()
    {
        var query = Assert.Single(
            StudyIntake.Read(GoodStudy.Edited("protocol.toml", "code = \"WB-RT-12\"\n", "")).Queries
        );

        Assert.Equal("Add \"code\"; write: code = \"WB-RT-12\".", query.Action);
    }
}
