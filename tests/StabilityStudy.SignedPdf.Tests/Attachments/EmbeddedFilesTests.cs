using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Compression;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Attachments;

public static class EmbeddedFilesTests
{
    private static readonly byte[] File = Rewritten.Of(DrawnDocument.Draw(pages: 1));

    [Fact]
    public static void The_attached_bytes_come_out_in_the_order_of_the_names()
    {
        var files = Rewritten.Value(EmbeddedFiles.Extract(Rewritten.Read(File)));

        Assert.Equal(
            ["drawn.txt", "empty.txt", "results.csv", "prüfplan.toml"],
            files.Select(static file => file.Name),
            StringComparer.Ordinal
        );
        Assert.Equal("attached while drawing"u8.ToArray(), files[0].Bytes.ToArray());
        Assert.True(files[1].Bytes.IsEmpty);
        Assert.Equal(Rewritten.CsvBytes, files[2].Bytes.ToArray());
        Assert.Equal("format = 1\n"u8.ToArray(), files[3].Bytes.ToArray());
    }

    [Fact]
    public static void Each_file_is_associated_with_the_document_and_described()
    {
        var document = Rewritten.Read(File);
        var associated = Assert.IsType<PdfArray>(document.Resolve(document.Catalog.Find("AF")));
        var specifications = associated.Items.Select(document.ResolveDictionary).ToList();
        var results = specifications[2];
        var content = Assert.IsType<PdfStream>(
            document.Resolve((results?.Find("EF") as PdfDictionary)?.Find("F"))
        );

        Assert.Equal(4, specifications.Count);
        Assert.Equal(
            ["Unspecified", "Unspecified", "Data", "Source"],
            specifications.Select(static found =>
                (found?.Find("AFRelationship") as PdfName)?.Value ?? ""
            ),
            StringComparer.Ordinal
        );
        Assert.Equal("Results as analyzed", (results?.Find("Desc") as PdfString)?.ToText());
        Assert.Equal("results.csv", (results?.Find("F") as PdfString)?.ToText());
        Assert.Equal("results.csv", (results?.Find("UF") as PdfString)?.ToText());
        Assert.Equal(new PdfName("text/csv"), content.Dictionary.Find("Subtype"));
        Assert.Equal(
            new PdfInteger(Rewritten.CsvBytes.Length),
            (content.Dictionary.Find("Params") as PdfDictionary)?.Find("Size")
        );
    }

    [Fact]
    public static void An_attachment_replaces_one_of_the_same_name()
    {
        var attachment = new Attachment(
            "drawn.txt",
            "text/plain",
            "New",
            AttachmentRelationship.Supplement,
            "new"u8.ToArray()
        );
        var result = Rewritten.Of(File, Rewritten.Options with { Attachments = [attachment] });
        var files = Rewritten.Value(EmbeddedFiles.Extract(Rewritten.Read(result)));

        Assert.Equal(4, files.Length);
        Assert.Equal("new"u8.ToArray(), files[0].Bytes.ToArray());
    }

    [Fact]
    public static void A_document_without_files_gives_none() =>
        Assert.Empty(
            Rewritten.Value(
                EmbeddedFiles.Extract(Rewritten.Read(HandMadePdf.Of("<</Type/Catalog>>")))
            )
        );

    [Theory]
    [InlineData("2 0 R")]
    [InlineData("<</Kids[2 0 R 2 0 R]>>")]
    [InlineData("[]")]
    [InlineData("<</Names[(a)]>>")]
    [InlineData("<</Names[/a 3 0 R]>>")]
    [InlineData("<</Names[(a) 9 0 R]>>")]
    [InlineData("<</Names[(a)<</EF<<>>>>]>>")]
    [InlineData("<</Names[(a)<</EF<</F(no stream)>>>>]>>")]
    [InlineData("<</Names[(a)<</EF<</F 3 0 R>>>>]>>")]
    [InlineData("<</Kids[<</Kids 4 0 R>>]>>")]
    public static void A_damaged_tree_or_file_is_a_failure(string tree)
    {
        var file = HandMadePdf.Of(
            "<</Type/Catalog/Names<</EmbeddedFiles 2 0 R>>>>",
            tree,
            "<</Filter/FlateDecode/Length 2>>stream\nxx\nendstream",
            "[2 0 R 2 0 R 2 0 R]"
        );

        var extracted = EmbeddedFiles.Extract(Rewritten.Read(file));

        Assert.Equal(tree is "2 0 R", extracted.TryGet(out _, out _));
    }

    [Fact]
    public static void Files_that_together_grow_beyond_the_bound_are_a_failure()
    {
        // Each holds a third of the bound and a little more; the same stream stands for all.
        var zeros = System.Text.Encoding.Latin1.GetString(
            Zeros((ReadingLimits.StreamLength / 3) + 1)
        );
        var file = HandMadePdf.Of(
            "<</Type/Catalog/Names<</EmbeddedFiles 2 0 R>>>>",
            "<</Names[(a) 3 0 R(b) 3 0 R(c) 3 0 R]>>",
            "<</EF<</F 4 0 R>>>>",
            $"<</Filter/FlateDecode/Length {zeros.Length}>>stream\n{zeros}\nendstream"
        );

        Assert.False(EmbeddedFiles.Extract(Rewritten.Read(file)).TryGet(out _, out var failure));
        Assert.Contains("bound", failure.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("..")]
    [InlineData("folder/file.csv")]
    [InlineData("folder\\file.csv")]
    [InlineData("C:file.csv")]
    [InlineData("line\nfeed")]
    public static void A_name_with_a_folder_or_control_character_throws(string name) =>
        Assert.Throws<ArgumentException>(() =>
            new Attachment(name, "text/csv", "", AttachmentRelationship.Data, default)
        );

    [Theory]
    [InlineData("")]
    [InlineData("text")]
    [InlineData("text/")]
    [InlineData("text/csv/x")]
    [InlineData("text/csv; charset=utf-8")]
    public static void A_kind_of_another_form_throws(string kind) =>
        Assert.Throws<ArgumentException>(() =>
            new Attachment("a.csv", kind, "", AttachmentRelationship.Data, default)
        );

    [Fact]
    public static void The_safe_relationship_is_the_first() =>
        Assert.Equal(AttachmentRelationship.Unspecified, default(AttachmentRelationship));

    private static byte[] Zeros(int length)
    {
        using var compressed = new MemoryStream();
        using (
            var zlib = new System.IO.Compression.ZLibStream(
                compressed,
                System.IO.Compression.CompressionLevel.Fastest,
                leaveOpen: true
            )
        )
        {
            zlib.Write(new byte[length]);
        }

        return compressed.ToArray();
    }
}
