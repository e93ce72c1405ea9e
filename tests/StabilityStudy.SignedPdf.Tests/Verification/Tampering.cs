using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Ways to change a document that was signed.</summary>
internal static class Tampering
{
    /// <summary>A further revision that paints over the first page.</summary>
    public static byte[] WithPaintedPage(byte[] file)
    {
        var (document, page, reference) = FirstPage(file);
        var paint = Next(document);
        var contents = page.Find("Contents") ?? new PdfNull();
        return PdfFileWriter.Append(
            document,
            [
                new(reference, page.With("Contents", new PdfArray([.. Items(contents), paint]))),
                new(paint, new PdfStream(PdfDictionary.Empty, "1 g 0 0 900 900 re f"u8.ToArray())),
            ]
        );
    }

    /// <summary>A further revision in which one object is changed.</summary>
    public static byte[] WithChanged(
        byte[] file,
        Func<PdfDocument, PdfReference> which,
        Func<PdfDictionary, PdfDictionary> change
    )
    {
        var document = Rewritten.Read(file);
        var reference = which(document);
        PdfObject changed = document.Find(reference) switch
        {
            PdfDictionary dictionary => change(dictionary),
            PdfStream stream => stream with { Dictionary = change(stream.Dictionary) },
            _ => throw new InvalidOperationException("Nothing to change."),
        };
        return PdfFileWriter.Append(document, [new(reference, changed)]);
    }

    /// <summary>A further revision in which one stream holds something else.</summary>
    public static byte[] WithStream(
        byte[] file,
        Func<PdfDocument, PdfReference> which,
        byte[] content
    )
    {
        var document = Rewritten.Read(file);
        var reference = which(document);
        var stream = Assert.IsType<PdfStream>(document.Find(reference));
        return PdfFileWriter.Append(
            document,
            [
                new(
                    reference,
                    new PdfStream(
                        stream.Dictionary.Without("Filter").Without("DecodeParms"),
                        content
                    )
                ),
            ]
        );
    }

    /// <summary>A further revision with an object that nothing leads to.</summary>
    public static byte[] WithLooseObject(byte[] file)
    {
        var document = Rewritten.Read(file);
        return PdfFileWriter.Append(document, [new(Next(document), PdfString.OfText("loose"))]);
    }

    /// <summary>A further revision that frees an object.</summary>
    public static byte[] WithFreed(byte[] file, PdfReference reference) =>
        WithSection(
            file,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{reference.Number} 1\n0000000000 00001 f \n"
            ),
            static trailer => trailer
        );

    /// <summary>A further revision without objects, with another trailer.</summary>
    public static byte[] WithTrailer(byte[] file, Func<PdfDictionary, PdfDictionary> change) =>
        WithSection(file, "0 1\n0000000000 65535 f \n", change);

    private static byte[] WithSection(
        byte[] file,
        string entries,
        Func<PdfDictionary, PdfDictionary> change
    )
    {
        var document = Rewritten.Read(file);
        var trailer = change(document.Trailer)
            .With("Prev", new PdfInteger(document.Revisions[^1].CrossReferenceOffset));
        var section = new System.Buffers.ArrayBufferWriter<byte>();
        PdfWriter.Write(section, trailer);
        var tail = string.Create(
            CultureInfo.InvariantCulture,
            $"xref\n{entries}trailer\n{Encoding.Latin1.GetString(section.WrittenSpan)}\nstartxref\n{file.Length}\n%%EOF\n"
        );
        return [.. file, .. HandMadePdf.Bytes(tail)];
    }

    /// <summary>The file with a text replaced by one of the same length.</summary>
    public static byte[] Replaced(byte[] file, string old, string replacement, int from = 0)
    {
        Assert.Equal(old.Length, replacement.Length);
        var place = Place(file, old, from);
        var changed = file.ToArray();
        HandMadePdf.Bytes(replacement).CopyTo(changed, place);
        return changed;
    }

    public static int Place(byte[] file, string text, int from = 0)
    {
        var place = Encoding.Latin1.GetString(file).IndexOf(text, from, StringComparison.Ordinal);
        Assert.True(place >= 0, text);
        return place;
    }

    public static byte[] Flipped(byte[] file, int place, int bit = 0)
    {
        var changed = file.ToArray();
        changed[place] ^= (byte)(1 << bit);
        return changed;
    }

    public static PdfReference Root(PdfDocument document) =>
        Assert.IsType<PdfReference>(document.Trailer.Find("Root"));

    public static PdfReference Page(PdfDocument document) => FirstPage(document).Reference;

    public static PdfReference Field(PdfDocument document, string name) =>
        document
            .Objects.Single(found =>
                found.Value is PdfDictionary dictionary
                && dictionary.Find("FT") is not null
                && string.Equals(
                    (dictionary.Find("T") as PdfString)?.ToText(),
                    name,
                    StringComparison.Ordinal
                )
            )
            .Reference;

    public static PdfReference Value(PdfDocument document, string field) =>
        Assert.IsType<PdfReference>(
            Assert.IsType<PdfDictionary>(document.Find(Field(document, field))).Find("V")
        );

    public static PdfReference Typed(PdfDocument document, string type) =>
        document
            .Objects.Where(found =>
                (found.Value as PdfStream)?.Dictionary.Find("Type") is PdfName name
                && string.Equals(name.Value, type, StringComparison.Ordinal)
            )
            .MaxBy(static found => ((PdfStream)found.Value).Encoded.Length)!
            .Reference;

    public static PdfReference Next(PdfDocument document) =>
        new((int)Assert.IsType<PdfInteger>(document.Trailer.Find("Size")).Value, 0);

    private static (PdfDocument Document, PdfDictionary Page, PdfReference Reference) FirstPage(
        byte[] file
    )
    {
        var document = Rewritten.Read(file);
        var (page, reference) = FirstPage(document);
        return (document, page, reference);
    }

    private static (PdfDictionary Page, PdfReference Reference) FirstPage(PdfDocument document)
    {
        var pages = document.ResolveDictionary(document.Catalog.Find("Pages"));
        var kids = Assert.IsType<PdfArray>(document.Resolve(pages?.Find("Kids")));
        var reference = Assert.IsType<PdfReference>(kids.Items[0]);
        return (Assert.IsType<PdfDictionary>(document.Find(reference)), reference);
    }

    private static System.Collections.Immutable.ImmutableArray<PdfObject> Items(
        PdfObject contents
    ) => contents is PdfArray array ? array.Items : [contents];
}
