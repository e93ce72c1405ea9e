using System.Collections.Immutable;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
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
        if (!PdfDocumentReader.Read(document).TryGet(out var read, out var failure))
        {
            if (
                WithoutTail(document) is not { } complete
                || !PdfDocumentReader.Read(complete).TryGet(out read, out _)
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

        var covered = new HashSet<int>();
        var signed = fields.Where(static field => field.Dictionary.Find("V") is not null).ToList();
        ImmutableArray<(SignatureField Field, SignatureVerification Result)> signatures =
        [
            .. signed
                .Select(field =>
                    (Field: field, Result: SignatureCheck.Check(read, field, options, covered))
                )
                .OrderBy(static signature => signature.Result.Revision ?? int.MaxValue),
        ];
        problems.AddRange(FormProblems(read, fields, signed));
        problems.AddRange(OrderProblems(read, signatures));
        return new DocumentVerification(
            null,
            [.. problems],
            [.. signatures.Select(static signature => signature.Result)],
            Revisions(read, [.. signatures.Select(static signature => signature.Result)]),
            [
                .. fields
                    .Where(static field => field.Dictionary.Find("V") is null)
                    .Select(static field => field.Name),
            ]
        );
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

    private static IEnumerable<DocumentProblem> FormProblems(
        PdfDocument document,
        ImmutableArray<SignatureField> fields,
        List<SignatureField> signed
    )
    {
        var values = signed.Select(static field => field.ValueReference).ToList();
        var names = fields.Select(static field => field.Name);
        if (
            names.Distinct(StringComparer.Ordinal).Count() != fields.Length
            || values.Where(static value => value is not null).Distinct().Count() != values.Count
        )
        {
            yield return DocumentProblem.FieldNotUnique;
        }

        if (
            document.Objects.Any(found =>
                found.Value is PdfDictionary dictionary
                && dictionary.Find("ByteRange") is not null
                && !values.Contains(found.Reference)
            )
        )
        {
            yield return DocumentProblem.SignatureWithoutField;
        }
    }

    private static IEnumerable<DocumentProblem> OrderProblems(
        PdfDocument document,
        ImmutableArray<(SignatureField Field, SignatureVerification Result)> signatures
    )
    {
        var revisions = signatures
            .Select(static signature => signature.Result.Revision)
            .OfType<int>()
            .ToList();
        var last = document.Revisions.Length;
        if (revisions.Distinct().Count() != revisions.Count)
        {
            yield return DocumentProblem.RevisionSignedTwice;
        }

        if (!signatures.IsEmpty && !revisions.Contains(last))
        {
            yield return DocumentProblem.LastRevisionNotSigned;
        }

        var upTo = signatures.IsEmpty ? last : last - 1;
        if (Enumerable.Range(2, Math.Max(0, upTo - 1)).Any(number => !revisions.Contains(number)))
        {
            yield return DocumentProblem.RevisionNotSigned;
        }

        if (
            signatures is [var first, ..]
            && (
                !first.Result.Certifies
                || first.Field.ValueReference is not { } certification
                || document.ResolveDictionary(document.Catalog.Find("Perms"))?.Find("DocMDP")
                    is not PdfReference named
                || named != certification
            )
        )
        {
            yield return DocumentProblem.CertificationMissing;
        }
    }

    private static ImmutableArray<RevisionVerification> Revisions(
        PdfDocument document,
        ImmutableArray<SignatureVerification> signatures
    )
    {
        var revisions = ImmutableArray.CreateBuilder<RevisionVerification>();
        PdfDocument? before = null;
        for (var i = 0; i < document.Revisions.Length; i++)
        {
            var end = document.Revisions[i].End;
            var after =
                i == document.Revisions.Length - 1 ? document
                : PdfDocumentReader.Read(document.Bytes[..(int)end]).TryGet(out var read, out _)
                    ? read
                : null;
            var differences = (i, before, after) switch
            {
                (0, _, _) => [],
                (_, { } old, { } now) => RevisionComparison.Compare(old, now),
                _ => Unknown,
            };
            var field = signatures.FirstOrDefault(signature => signature.Revision == i + 1);
            revisions.Add(new RevisionVerification(i + 1, end, field?.FieldName, differences));
            before = after;
        }

        return revisions.DrainToImmutable();
    }

    /// <summary>A revision that cannot be read by itself may hold anything.</summary>
    private static ImmutableArray<RevisionDifference> Unknown { get; } =
    [new(RevisionChange.Changed, DocumentPart.Unreachable, null, null)];
}
