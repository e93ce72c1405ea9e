using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Tools;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Writing;

public static class AppendedRevisionTests
{
    private static readonly byte[] First = Rewritten.Of(DrawnDocument.Draw(pages: 1));

    [Fact]
    public static void The_bytes_before_stay_as_they_are()
    {
        var second = Append(First, "second");

        Assert.Equal(First, second[..First.Length]);
    }

    [Fact]
    public static void Each_revision_can_be_read_for_itself()
    {
        var third = Append(Append(First, "second"), "third");
        var document = Rewritten.Read(third);

        Assert.Equal(3, document.Revisions.Length);
        Assert.Equal(First.Length, document.Revisions[0].End);
        Assert.Equal(third.Length, document.Revisions[2].End);
        Assert.Equal(
            ["", "second", "third"],
            document.Revisions.Select(revision => Mark(third[..(int)revision.End])),
            StringComparer.Ordinal
        );
    }

    [Fact]
    public static void A_new_object_and_a_replaced_one_are_found_and_others_stay()
    {
        var before = Rewritten.Read(First);
        var after = Rewritten.Read(Append(First, "second"));

        Assert.Equal(before.Objects.Length + 1, after.Objects.Length);
        Assert.Equal(before.Trailer.Find("ID")?.GetType(), after.Trailer.Find("ID")?.GetType());
        Assert.NotNull(after.ResolveDictionary(after.Catalog.Find("Pages")));
    }

    [Fact]
    public static void Rewriting_joins_the_revisions_to_one()
    {
        var rewritten = Rewritten.Of(Append(First, "second"));

        Assert.Single(Rewritten.Read(rewritten).Revisions);
        Assert.Equal("second", Mark(rewritten));
    }

    [Fact]
    public static void An_older_revision_cannot_be_reached_in_a_circle()
    {
        var second = Append(First, "second");
        var previous = FormattableString.Invariant(
            $"/Prev {Rewritten.Read(First).Revisions[0].CrossReferenceOffset}"
        );
        var own = FormattableString.Invariant(
            $"/Prev {Rewritten.Read(second).Revisions[1].CrossReferenceOffset}"
        );
        var circle = HandMadePdf.Bytes(
            System
                .Text.Encoding.Latin1.GetString(second)
                .Replace(previous, own, StringComparison.Ordinal)
        );

        Assert.False(PdfDocumentReader.Read(circle).TryGet(out _, out var failure));
        Assert.Contains("does not lie before", failure.What, StringComparison.Ordinal);
    }

    [Fact]
    public static void A_revision_after_a_cross_reference_stream_has_one_too()
    {
        var before = TestData.Read("object-streams.pdf");
        var document = Rewritten.Read(before);
        var next = (int)((PdfInteger)document.Trailer.Find("Size")!).Value;
        PdfIndirectObject[] added =
        [
            new(new PdfReference(next, 0), PdfString.OfText("first")),
            new(new PdfReference(next + 2, 0), PdfString.OfText("after a gap")),
        ];
        var file = PdfFileWriter.Append(document, [.. added]);
        var after = Rewritten.Read(file);

        Assert.Equal(before, file[..before.Length]);
        Assert.All(after.Revisions, revision => Assert.True(revision.HasCrossReferenceStream));
        Assert.Equal(2, after.Revisions.Length);
        Assert.Equal(
            added.Select(value => value.Reference),
            after.Objects.Select(found => found.Reference).Where(found => found.Number >= next)
        );
        Assert.Equal(
            document.Objects.Select(found => found.Reference),
            after.Objects.Select(found => found.Reference).Where(found => found.Number < next)
        );
        Assert.Equal(document.Trailer.Find("Root"), after.Trailer.Find("Root"));
    }

    /// <summary>Some reader could show what is in such a stream, and no comparison of objects would find it.</summary>
    [Fact]
    public static void An_object_that_refers_to_a_cross_reference_stream_is_refused()
    {
        var document = Rewritten.Read(TestData.Read("object-streams.pdf"));
        var next = (int)((PdfInteger)document.Trailer.Find("Size")!).Value;
        var file = PdfFileWriter.Append(
            document,
            [
                new(
                    new PdfReference(next, 0),
                    PdfDictionary.Of(
                        new PdfEntry("Contents", new PdfArray([new PdfReference(next + 1, 0)]))
                    )
                ),
            ]
        );

        Assert.False(PdfDocumentReader.Read(file).TryGet(out _, out var failure));
        Assert.Equal("An object refers to a cross-reference stream.", failure.What);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(200)]
    [InlineData(201)]
    [InlineData(1000)]
    public static void Packed_objects_are_read_as_they_were(int count)
    {
        PdfIndirectObject[] objects =
        [
            .. Enumerable
                .Range(1, count)
                .Select(number => new PdfIndirectObject(
                    // A gap after every tenth number, a stream at every seventh object.
                    new PdfReference(number + (number / 10), 0),
                    number % 7 == 0
                        ? new PdfStream(PdfDictionary.Empty, new byte[] { 1, 2, 3 })
                        : PdfDictionary.Of(new PdfEntry("Number", new PdfInteger(number)))
                )),
        ];
        var trailer = PdfDictionary.Of(new PdfEntry("Root", objects[0].Reference));
        var document = Rewritten.Read(
            PdfFileWriter.WritePacked(ObjectStreams.Pack([.. objects]), trailer).ToArray()
        );

        Assert.All(
            objects,
            value =>
                Assert.Equal(
                    (value.Value as PdfDictionary)?.Find("Number"),
                    (document.Find(value.Reference) as PdfDictionary)?.Find("Number")
                )
        );
        Assert.Equal(count / 7, document.Objects.Count(IsOwnStream));

        static bool IsOwnStream(PdfIndirectObject found) =>
            found.Value is PdfStream stream && stream.Dictionary.Find("Type") is null;
    }

    [Fact]
    public static void Numbers_that_do_not_ascend_throw()
    {
        var value = new PdfIndirectObject(new PdfReference(1, 0), new PdfNull());

        Assert.Throws<ArgumentException>(() =>
            PdfFileWriter.Write([value, value], PdfDictionary.Empty)
        );
    }

    [Fact]
    public static void Numbers_left_out_are_free()
    {
        var catalog = PdfDictionary.Of(new PdfEntry("Type", new PdfName("Catalog")));
        var file = PdfFileWriter.Write(
            [
                new(new PdfReference(3, 0), catalog),
                new(new PdfReference(7, 0), new PdfBoolean(true)),
            ],
            PdfDictionary.Of(new PdfEntry("Root", new PdfReference(3, 0)))
        );
        var document = Rewritten.Read(file);

        Assert.Equal([3, 7], document.Objects.Select(static found => found.Reference.Number));
        Assert.Equal(new PdfInteger(8), document.Trailer.Find("Size"));
    }

    [Fact]
    public static async Task Qpdf_has_nothing_to_say_about_three_revisions()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("revisions.pdf", Append(Append(First, "second"), "third"));

        var answer = await OutsideTool.Run("qpdf", "--check", file);

        Assert.Equal("", answer.Error);
        Assert.Equal(0, answer.ExitCode);
    }

    /// <summary>A revision with a new object, to which a new entry of the catalog refers.</summary>
    private static byte[] Append(byte[] file, string mark)
    {
        var document = Rewritten.Read(file);
        var root = Assert.IsType<PdfReference>(document.Trailer.Find("Root"));
        var added = new PdfReference(
            (int)Assert.IsType<PdfInteger>(document.Trailer.Find("Size")).Value,
            0
        );
        return PdfFileWriter.Append(
            document,
            [new(root, document.Catalog.With("Mark", added)), new(added, PdfString.OfText(mark))]
        );
    }

    private static string Mark(byte[] file)
    {
        var document = Rewritten.Read(file);
        return (document.Resolve(document.Catalog.Find("Mark")) as PdfString)?.ToText() ?? "";
    }
}
