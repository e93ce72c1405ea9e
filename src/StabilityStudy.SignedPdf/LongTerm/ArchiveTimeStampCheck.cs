using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>Checks the archive time stamps of a document, each in the light of those after it.</summary>
internal static class ArchiveTimeStampCheck
{
    /// <param name="document">The document.</param>
    /// <param name="fields">The fields that are filled with a time stamp.</param>
    /// <param name="options">Who is trusted.</param>
    /// <param name="covered">Indices of revisions that other signatures cover; those of the time stamps are added.</param>
    public static ArchiveProofs Of(
        PdfDocument document,
        IEnumerable<SignatureField> fields,
        VerificationOptions options,
        HashSet<int> covered
    )
    {
        var proofs = ArchiveProofs.None;
        var ordered = fields
            .Select(field =>
                (Field: field, Range: SignedRange.Of(document, field.Value ?? PdfDictionary.Empty))
            )
            .OrderByDescending(item => item.Range.Revision ?? int.MaxValue);
        foreach (var (field, range) in ordered)
        {
            proofs = proofs.Before(Check(document, field, range, options, proofs, covered));
        }

        return proofs;
    }

    private static ArchiveTimeStampVerification Check(
        PdfDocument document,
        SignatureField field,
        SignedRange range,
        VerificationOptions options,
        ArchiveProofs later,
        HashSet<int> covered
    )
    {
        var problems = new List<SignatureProblem>(range.Problems);
        TimeStampVerification? stamp = null;
        if (
            !ArchiveFields.Holds(field.Name)
            || field.Value?.Find("SubFilter") is not PdfName { Value: ArchiveTimeStamp.SubFilter }
            || field.Value.Find("Contents") is not PdfString contents
            || !IsAppended(document, field, range)
        )
        {
            problems.Add(SignatureProblem.DictionaryNotSupported);
        }
        else if (range.Revision is { } revision && !covered.Add(revision))
        {
            problems.Add(SignatureProblem.RevisionSignedByAnother);
        }
        else if (range.Revision is not null && problems.Count == 0)
        {
            stamp = Token(contents, range.Covered(document.Bytes.Span), options, later, problems);
        }

        return new(field.Name, range.Revision + 1, [.. problems.Distinct()], stamp);
    }

    private static TimeStampVerification? Token(
        PdfString contents,
        byte[] covered,
        VerificationOptions options,
        ArchiveProofs later,
        List<SignatureProblem> problems
    )
    {
        var bytes = contents.Bytes.AsMemory();
        if (ContainerForm.OfTimeStamp(bytes) is not { Length: var length } form)
        {
            problems.Add(SignatureProblem.ContainerMalformed);
            return null;
        }

        if (bytes.Span[length..].ContainsAnyExcept((byte)0))
        {
            problems.Add(SignatureProblem.PaddingNotZero);
            return null;
        }

        var stamp = TimeStampCheck.Read(
            bytes[..length],
            token =>
                token.VerifySignatureForData(covered, out var authority)
                // Libraries compare names without regard to case and kind of string.
                && form.Issuer.Span.SequenceEqual(authority.IssuerName.RawData)
                && form.SerialNumber.Span.SequenceEqual(authority.SerialNumberBytes.Span)
                    ? authority
                    : null,
            options,
            later.Earliest,
            out var problem
        );
        if (problem is { } wrong)
        {
            problems.Add(wrong);
        }
        else if (stamp is not null && stamp.Time > options.Now + ContainerCheck.ClockDifference)
        {
            problems.Add(SignatureProblem.DatedInFuture);
        }
        else if (stamp is not null && later.Earliest < stamp.Time)
        {
            problems.Add(SignatureProblem.TimeStampBeforeSigning);
        }

        return problems.Count == 0 ? stamp : null;
    }

    /// <summary>The time stamp itself aside, the revision is the one that renewing appends.</summary>
    private static bool IsAppended(PdfDocument document, SignatureField field, SignedRange range)
    {
        if (
            range.Revision is not (> 0 and var revision)
            || !PdfDocumentReader
                .Read(document.Bytes[..(int)document.Revisions[revision - 1].End])
                .TryGet(out var before, out _)
            || SignatureForm
                .Fields(before)
                ?.FirstOrDefault(old =>
                    old.Reference is not null
                    && old.Reference.Equals(field.Reference)
                    && old.Dictionary.Find("V") is null
                )
                is not { } empty
        )
        {
            return false;
        }

        var expected = ArchiveTimeStamp.Append(before, empty, out var number);
        return SignaturePlaceholder.IsFilledIn(
            expected,
            number,
            document.Bytes.Span[..(int)document.Revisions[revision].End]
        );
    }
}
