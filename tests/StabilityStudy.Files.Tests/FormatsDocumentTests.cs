using StabilityStudy.Files.Formats;
using StabilityStudy.Files.Intake;

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

    [Fact]
    public void The_words_of_a_column_stand_beside_it()
    {
        Assert.Contains(
            "| `clot` | no | whether there was a clot; empty is not the same as no | \"no\" \\| \"yes\" | `no` |",
            FormatsDocument.ToMarkdown(),
            StringComparison.Ordinal
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
