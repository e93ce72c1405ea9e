using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Verifies the signatures of a document and that nothing but signing was done to it. Trusts nothing in the file, asks nobody, and
/// gives an answer for any bytes whatever.
/// </summary>
public static class SignatureVerifier
{
    /// <summary>Everything that was found out; never an exception for what the bytes hold.</summary>
    /// <param name="document">The bytes of the whole file.</param>
    /// <param name="options">Who is trusted.</param>
    public static DocumentVerification Verify(
        ReadOnlyMemory<byte> document,
        VerificationOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        var problems = new List<DocumentProblem>();

        // All readings of the file share one bound on what it may unpack to.
        var budget = new DecodingBudget();
        if (!PdfDocumentReader.ReadWithin(document, budget).TryGet(out var read, out var failure))
        {
            if (
                WithoutTail(document) is not { } complete
                || !PdfDocumentReader.ReadWithin(complete, budget).TryGet(out read, out _)
            )
            {
                return new(failure, [DocumentProblem.Unreadable], [], [], []);
            }

            problems.Add(DocumentProblem.BytesAfterEnd);
        }

        if (SignatureForm.Fields(read) is not { } fields)
        {
            problems.Add(DocumentProblem.FormMalformed);
            fields = [];
        }

        var stored = DocumentData.Of(ValidationStore.Read(read));
        if (!stored.IsWhole)
        {
            problems.Add(DocumentProblem.ValidationDataMalformed);
        }

        options = options with { Stored = stored };

        // Each signature needs a revision of its own: one more than there are revisions shows that some have none.
        var covered = new HashSet<int>();
        var filled = fields
            .Where(static field => field.Dictionary.Find("V") is not null)
            .Take(read.Revisions.Length + 1)
            .ToLookup(ArchiveTimeStamp.IsIn);
        var proofs = ArchiveTimeStampCheck.Of(read, filled[true], options, covered);
        var signed = filled[false]
            .Select(field => (field, SignatureCheck.Check(read, field, options, proofs, covered)))
            .OrderBy(static signature => signature.Item2.Revision ?? int.MaxValue)
            .ToList();
        problems.AddRange(DocumentCheck.FormProblems(read, fields));
        var signatures = signed.Select(static signature => signature.Item2).ToList();
        var forms = new List<DocumentProblem>();
        var revisions = RevisionChain.Compare(read, signatures, proofs.All, forms, budget);
        problems.AddRange(DocumentCheck.OrderProblems(read, signed, proofs.All, revisions));
        problems.AddRange(forms);
        return new DocumentVerification(
            null,
            [.. problems.Distinct()],
            [.. signatures],
            revisions,
            [
                .. fields
                    .Where(static field =>
                        field.Dictionary.Find("V") is null && !ArchiveFields.Holds(field.Name)
                    )
                    .Select(static field => field.Name),
            ]
        )
        {
            ArchiveTimeStamps = proofs.All,
        };
    }

    /// <summary>The file up to its last end-of-file marker; null when nothing comes after that.</summary>
    private static ReadOnlyMemory<byte>? WithoutTail(ReadOnlyMemory<byte> document)
    {
        var marker = document.Span.LastIndexOf("%%EOF"u8);
        if (marker < 0)
        {
            return null;
        }

        var cursor = new PdfCursor(document, marker + "%%EOF".Length);
        cursor.TryTakeEndOfLine(loneReturn: true);
        return cursor.Position < document.Length ? document[..cursor.Position] : null;
    }
}
