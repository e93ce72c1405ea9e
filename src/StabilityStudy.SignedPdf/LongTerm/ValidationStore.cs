using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>
/// The document security store (ETSI EN 319 142-1, clause 5.4.2): validation data inside the document. Each time some is added, one revision is appended that changes the catalog's
/// entry /DSS alone and brings a store with all that was there before.
/// </summary>
internal static class ValidationStore
{
    /// <summary>The catalog's entry.</summary>
    public const string Entry = "DSS";

    private const string Certificates = "Certs";
    private const string RevocationLists = "CRLs";
    private const string Answers = "OCSPs";

    /// <summary>What the document holds; what stands there in another form is left out.</summary>
    public static ValidationData Read(PdfDocument document) =>
        document.ResolveDictionary(document.Catalog.Find(Entry)) is { } store
            ? new(
                [.. Streams(document, store, Certificates).Select(static item => item.Encoded)],
                [.. Streams(document, store, RevocationLists).Select(static item => item.Encoded)],
                [.. Streams(document, store, Answers).Select(static item => item.Encoded)]
            )
            : ValidationData.None;

    /// <summary>The document followed by a revision with more data; some of it must be new.</summary>
    public static byte[] Append(PdfDocument document, ValidationData added)
    {
        var objects = new NewObjects(document);
        var present = document.ResolveDictionary(document.Catalog.Find(Entry));
        var store = PdfDictionary.Of([
            new PdfEntry("Type", new PdfName(Entry)),
            .. Filled(Certificates, added.Certificates),
            .. Filled(RevocationLists, added.RevocationLists),
            .. Filled(Answers, added.Answers),
        ]);
        var reference = objects.Add(store);
        var root = (PdfReference)document.Trailer.Find("Root")!;
        return PdfFileWriter.Append(
            document,
            [
                .. objects
                    .Added.Append(new(root, document.Catalog.With(Entry, reference)))
                    .OrderBy(static entry => entry.Reference.Number),
            ]
        );

        IEnumerable<PdfEntry> Filled(string key, ImmutableArray<ReadOnlyMemory<byte>> items)
        {
            ImmutableArray<PdfObject> all =
            [
                .. present?.Find(key) is PdfArray before ? before.Items : [],
                .. items.Select(item => objects.Add(new PdfStream(PdfDictionary.Empty, item))),
            ];
            return all.IsEmpty ? [] : [new PdfEntry(key, new PdfArray(all))];
        }
    }

    /// <summary>Whether the later file is the earlier one with a revision as <see cref="Append"/> makes it.</summary>
    public static bool IsAppended(PdfDocument before, PdfDocument after)
    {
        var added = Read(after).Without(Read(before));
        return !added.IsEmpty
            && before.Trailer.Find("Root") is PdfReference
            && after.Bytes.Span.SequenceEqual(Append(before, added));
    }

    private static IEnumerable<PdfStream> Streams(
        PdfDocument document,
        PdfDictionary store,
        string key
    ) =>
        document.Resolve(store.Find(key)) is PdfArray array
            ? array.Items.Select(document.Resolve).OfType<PdfStream>()
            : [];
}
