using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Formats;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Toml;

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
    public void Every_key_of_the_protocol_has_a_note_and_every_note_a_key()
    {
        Assert.Equal(
            Keys(ProtocolKeys.All),
            ProtocolNotes.All.Select(note => LastTwo(note.Path)).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Every_key_of_the_study_facts_has_a_note_and_every_note_a_key()
    {
        Assert.Equal(
            Keys(FactsKeys.All),
            FactsNotes.All.Select(note => LastTwo(note.Path)).Order(StringComparer.Ordinal)
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
            notes.Where(note => note.Need == KeyNeed.Required).Select(note => note.Path)
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

    private static IEnumerable<string> Keys(IEnumerable<TableShape> shapes) =>
        shapes
            .SelectMany(shape =>
                shape.Keys.Select(key => shape.Name.Length == 0 ? key : $"{shape.Name}.{key}")
            )
            .Select(LastTwo)
            .Order(StringComparer.Ordinal);

    private static string LastTwo(string path) => string.Join('.', path.Split('.').TakeLast(2));
}
