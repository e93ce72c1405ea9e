using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Checks how the signatures of a document fit together.</summary>
internal static class DocumentCheck
{
    /// <summary>Signatures and fields must belong to each other one to one.</summary>
    public static IEnumerable<DocumentProblem> FormProblems(
        PdfDocument document,
        ImmutableArray<SignatureField> fields
    )
    {
        var signed = fields.Where(static field => field.Dictionary.Find("V") is not null).ToList();
        var values = signed
            .Select(static field => field.ValueReference)
            .OfType<PdfReference>()
            .ToHashSet();
        var names = fields.Select(static field => field.Name);
        if (
            names.Distinct(StringComparer.Ordinal).Count() != fields.Length
            || values.Count != signed.Count
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

    /// <summary>
    /// The first signature must certify, and each later revision must be that of one signature or archive time stamp, or bring validation data, which a time stamp or signature must follow before there
    /// is more.
    /// </summary>
    public static IEnumerable<DocumentProblem> OrderProblems(
        PdfDocument document,
        List<(SignatureField Field, SignatureVerification Result)> signatures,
        ImmutableArray<ArchiveTimeStampVerification> archive,
        ImmutableArray<RevisionVerification> compared
    )
    {
        var data = compared
            .Where(static revision => revision.BringsValidationData)
            .Select(static revision => revision.Number)
            .ToHashSet();
        var revisions = signatures
            .Select(static signature => signature.Result.Revision)
            .Concat(archive.Select(static stamp => stamp.Revision))
            .OfType<int>()
            .Concat(data)
            .ToList();
        var last = document.Revisions.Length;
        if (revisions.Distinct().Count() != revisions.Count)
        {
            yield return DocumentProblem.RevisionSignedTwice;
        }

        if (revisions.Count > 0 && !revisions.Contains(last))
        {
            yield return DocumentProblem.LastRevisionNotSigned;
        }

        var upTo = revisions.Count == 0 ? last : last - 1;
        if (
            Enumerable.Range(2, Math.Max(0, upTo - 1)).Any(number => !revisions.Contains(number))
            || data.Any(number => data.Contains(number - 1))
            || (
                revisions.Count > 0
                && revisions.Min() != signatures.FirstOrDefault().Result?.Revision
            )
        )
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
}
