using System.Buffers;
using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>Right signatures over revisions that the program would not append.</summary>
internal static class ForgedRevision
{
    private const string DoubledEntry = "doubled";

    private static readonly Lazy<StudyAnalysis> s_analysis = new(() =>
    {
        Assert.True(AttachedStudy.TryRead(EvidenceExample.Unsigned, out var study, out _));
        return Recomputation.Of(study).Recomputed!;
    });

    /// <summary>The analysis in the example's report.</summary>
    public static StudyAnalysis Analysis => s_analysis.Value;

    /// <summary>What the author's signature says, in the author's field.</summary>
    public static SignatureContent Author => ContentOf(0, EvidenceExample.Author, null);

    /// <summary>What the approver's signature says, in the approver's field.</summary>
    public static SignatureContent Approver =>
        ContentOf(1, EvidenceExample.Director, ApprovalOf(Analysis));

    /// <summary>Every window that a study supports, as the approver decides on it.</summary>
    public static ApproverDecision ApprovalOf(StudyAnalysis analysis) =>
        DecisionMaking.Of(analysis, DecisionRequest.Approval, earlier: null).Decision!;

    /// <summary>What a signature says as the program writes it, but for what is given.</summary>
    public static SignatureContent ContentOf(
        int index,
        Signer signer,
        ApproverDecision? decision,
        Func<SignedStatement, SignedStatement>? stating = null,
        DateTimeOffset? at = null,
        string? digest = null,
        ReadOnlyMemory<byte>? file = null
    )
    {
        // "null" alone would become an empty file.
        var document = file ?? EvidenceExample.Unsigned;
        using var key = signer.Key();
        var signatory = Analysis.Protocol.Signatories[index];
        var name = key.Certificate.Name;
        var time = at ?? EvidenceExample.Now;
        var statement = new SignedStatement(
            signatory.Role,
            null,
            decision,
            digest ?? Analysis.Identity.InputDigest,
            ToolVersion.Current,
            []
        );
        statement = stating is null ? statement : stating(statement);
        return new SignatureContent(
            SignatoryFields.NameOf(index),
            time,
            name,
            SignatoryFields.MeaningOf(signatory),
            null,
            statement.ToJson(),
            StampLines.Stamp(
                Analysis.Protocol,
                signatory,
                name,
                time,
                statement,
                key.Certificate,
                PdfSigner.PlaceOf(document, SignatoryFields.NameOf(index))!,
                PdfSigner.AreasOf(document, SignatoryFields.NameOf(index))
            )
        );
    }

    /// <summary>The file with a further signature.</summary>
    /// <param name="file">The file.</param>
    /// <param name="content">What the signature says.</param>
    /// <param name="signer">Who signs.</param>
    /// <param name="change">What else is changed in the revision.</param>
    /// <param name="range">Another way to write the byte range.</param>
    public static byte[] Sign(
        ReadOnlyMemory<byte> file,
        SignatureContent content,
        Signer signer,
        Action<Revision>? change = null,
        Func<string, string>? range = null
    )
    {
        var revision = Revision.Filling(Read(file), content);
        change?.Invoke(revision);
        return Filled(revision.Append(), revision.Value.Number, signer, range);
    }

    /// <summary>The approver's signature after bytes that belong to no object.</summary>
    public static byte[] SignAfter(string unnamed)
    {
        var before = Read((byte[])[.. EvidenceExample.SignedOnce.Span]);
        var revision = Revision.Filling(before, Approver);
        var longer = new PdfDocument(
            (byte[])[.. before.Bytes.Span, .. Encoding.Latin1.GetBytes(unnamed)],
            before.Trailer,
            before.Revisions,
            System.Collections.Frozen.FrozenDictionary.ToFrozenDictionary(
                before.Objects,
                found => found.Reference.Number
            )
        );
        return Filled(
            PdfFileWriter.Append(longer, revision.Objects),
            revision.Value.Number,
            EvidenceExample.Director
        );
    }

    /// <summary>The approver's signature in a revision with a classic cross-reference table, which may hold more.</summary>
    /// <param name="insideTable">What stands at the start of the table.</param>
    /// <param name="isDoubled">Whether the table lists one object twice, at two places.</param>
    /// <param name="digits">How many digits the offset at the end has.</param>
    /// <param name="trailer">Further entries of the trailer.</param>
    public static byte[] SignWithTable(
        string insideTable = "",
        bool isDoubled = false,
        int digits = 1,
        Func<PdfDictionary, PdfDictionary>? trailer = null
    )
    {
        var before = Read(EvidenceExample.SignedOnce);
        var revision = Revision.Filling(before, Approver);
        var output = new ArrayBufferWriter<byte>();
        output.Write(before.Bytes.Span);
        var rows = new StringBuilder();
        if (isDoubled)
        {
            Add(
                revision.Objects[0] with
                {
                    Value = PdfDictionary.Of(new PdfEntry(DoubledEntry, new PdfInteger(1))),
                }
            );
        }

        foreach (var item in revision.Objects)
        {
            Add(item);
        }

        var start = output.WrittenCount;
        Text($"xref\n{insideTable}{rows}trailer\n");
        var last = before
            .Trailer.With("Prev", new PdfInteger(before.Revisions[^1].CrossReferenceOffset))
            .With("Size", new PdfInteger(revision.Objects[^1].Reference.Number + 1L));
        PdfWriter.Write(output, trailer is null ? last : trailer(last));
        var place = start.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
        Text($"\nstartxref\n{place}\n%%EOF\n");
        return Filled(
            output.WrittenSpan.ToArray(),
            revision.Value.Number,
            EvidenceExample.Director
        );

        void Add(PdfIndirectObject item)
        {
            rows.Append(
                CultureInfo.InvariantCulture,
                $"{item.Reference.Number} 1\n{output.WrittenCount:D10} 00000 n \n"
            );
            PdfWriter.WriteIndirect(output, item);
        }

        void Text(string text) => output.Write(Encoding.ASCII.GetBytes(text));
    }

    /// <summary>A revision that nobody signed.</summary>
    public static byte[] Unsigned(ReadOnlyMemory<byte> file, Action<Revision> change)
    {
        var revision = new Revision(Read(file), []);
        change(revision);
        return revision.Append();
    }

    public static PdfDocument Read(ReadOnlyMemory<byte> file)
    {
        Assert.True(PdfDocumentReader.Read(file).TryGet(out var document, out var why), why?.What);
        return document;
    }

    private static byte[] Filled(
        byte[] bytes,
        int number,
        Signer signer,
        Func<string, string>? range = null
    )
    {
        var place = SignaturePlaceholder.Find(bytes, number);
        Assert.NotNull(place);
        place.WriteRange(bytes);
        if (range is not null)
        {
            var span = bytes.AsSpan(place.RangeStart, place.RangeLength);
            var text = range(Encoding.ASCII.GetString(span).TrimEnd());
            Assert.True(text.Length <= place.RangeLength);
            Encoding.ASCII.GetBytes(text.PadRight(place.RangeLength), span);
        }

        using var key = signer.Key();
        place.WriteSignature(bytes, SignatureContainer.Sign(place.Covered(bytes), key));
        return bytes;
    }
}

/// <summary>A revision to be appended to a file.</summary>
internal sealed class Revision(PdfDocument before, ImmutableArray<PdfIndirectObject> objects)
{
    public PdfDocument Before { get; } = before;

    /// <summary>Its objects by ascending number.</summary>
    public ImmutableArray<PdfIndirectObject> Objects { get; private set; } = objects;

    /// <summary>The signature.</summary>
    public PdfReference Value => Objects.Single(item => IsSignature(item.Value)).Reference;

    /// <summary>The field that it fills.</summary>
    public PdfReference Field =>
        Objects.Single(item => (item.Value as PdfDictionary)?.Find("FT") is not null).Reference;

    public PdfReference Catalog => Assert.IsType<PdfReference>(Before.Trailer.Find("Root"));

    public PdfReference Page
    {
        get
        {
            var pages = Before.ResolveDictionary(Before.Catalog.Find("Pages"));
            var kids = Assert.IsType<PdfArray>(Before.Resolve(pages?.Find("Kids")));
            return Assert.IsType<PdfReference>(kids.Items[0]);
        }
    }

    /// <summary>The revision that signing appends.</summary>
    public static Revision Filling(PdfDocument before, SignatureContent content)
    {
        Assert.True(FieldToFill.Of(before, content.FieldName).TryGet(out var place, out _));
        var after = ForgedRevision.Read(place.Append(content, out _));
        var numbers = after.Revisions[^1].Numbers;
        return new Revision(
            before,
            [.. after.Objects.Where(found => numbers.Contains(found.Reference.Number))]
        );
    }

    /// <summary>Changes an object, of this revision or from before.</summary>
    public void Change(PdfReference which, Func<PdfDictionary, PdfDictionary> change)
    {
        var now =
            Objects.FirstOrDefault(item => item.Reference == which)?.Value ?? Before.Find(which);
        Put(
            which,
            now switch
            {
                PdfDictionary dictionary => change(dictionary),
                PdfStream stream => stream with { Dictionary = change(stream.Dictionary) },
                _ => throw new InvalidOperationException("There is nothing to change."),
            }
        );
    }

    /// <summary>Adds an object.</summary>
    public PdfReference Add(PdfObject value)
    {
        var size = Assert.IsType<PdfInteger>(Before.Trailer.Find("Size")).Value;
        var last = Objects.IsEmpty ? 0 : Objects[^1].Reference.Number;
        var reference = new PdfReference((int)Math.Max(size, last + 1L), 0);
        Put(reference, value);
        return reference;
    }

    public void Put(PdfReference which, PdfObject value) =>
        Objects = [
            .. Objects
                .Where(item => item.Reference != which)
                .Append(new PdfIndirectObject(which, value))
                .OrderBy(item => item.Reference.Number),
        ];

    public byte[] Append() => PdfFileWriter.Append(Before, Objects);

    private static bool IsSignature(PdfObject value) =>
        (value as PdfDictionary)?.Find("ByteRange") is not null;
}
