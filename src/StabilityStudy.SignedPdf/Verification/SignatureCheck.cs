using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Checks one signature.</summary>
internal static class SignatureCheck
{
    /// <param name="document">The document.</param>
    /// <param name="field">The field with the signature.</param>
    /// <param name="options">Who is trusted.</param>
    /// <param name="proofs">The archive time stamps of the document.</param>
    /// <param name="covered">Indices of revisions that other signatures cover; the signature's own is added. So no revision is hashed twice.</param>
    public static SignatureVerification Check(
        PdfDocument document,
        SignatureField field,
        VerificationOptions options,
        ArchiveProofs proofs,
        HashSet<int> covered
    )
    {
        var signature = field.Value ?? PdfDictionary.Empty;
        var problems = new List<SignatureProblem>();
        if (
            Name(document, signature.Find("SubFilter")) is not SignatureDictionary.SubFilter
            || Name(document, signature.Find("Filter")) is not "Adobe.PPKLite"
            || signature.Find("Contents") is not PdfString contents
        )
        {
            return Verification(
                document,
                field,
                null,
                [SignatureProblem.DictionaryNotSupported],
                null,
                null
            );
        }

        var time = document.Resolve(signature.Find("M")) is PdfString date
            ? PdfDate.Parse(date)
            : null;
        if (time is null)
        {
            problems.Add(SignatureProblem.SigningTimeMissing);
        }

        var range = SignedRange.Of(document, signature);
        problems.AddRange(range.Problems);
        if (range.Revision is not { } revision)
        {
            return Verification(document, field, null, problems, time, null);
        }

        if (!covered.Add(revision))
        {
            problems.Add(SignatureProblem.RevisionSignedByAnother);
            return Verification(document, field, range.Revision, problems, time, null);
        }

        var findings = ContainerCheck.Check(
            contents.Bytes.AsMemory(),
            range.Covered(document.Bytes.Span),
            time,
            options,
            proofs.EarliestAfter(revision + 1)
        );
        problems.AddRange(findings.Problems);
        return Verification(document, field, revision, problems, time, findings);
    }

    private static SignatureVerification Verification(
        PdfDocument document,
        SignatureField field,
        int? revision,
        List<SignatureProblem> problems,
        DateTimeOffset? time,
        ContainerFindings? findings
    )
    {
        var signature = field.Value ?? PdfDictionary.Empty;

        string? Text(string key) => (document.Resolve(signature.Find(key)) as PdfString)?.ToText();

        return new SignatureVerification(
            field.Name,
            revision + 1,
            [.. problems.Distinct()],
            Text("Name"),
            Text("Reason"),
            Text("Location"),
            time,
            Text(SignatureDictionary.Statement),
            Certifies(signature),
            findings?.Signer,
            findings?.Chain ?? ChainVerification.NotChecked,
            findings?.TimeStamp
        )
        {
            Place = FieldRectangle.Of(document, field.Dictionary),
            ExistedAt = findings?.ExistedAt,
        };
    }

    private static bool Certifies(PdfDictionary signature) =>
        signature.Find("Reference") is PdfArray { Items: [PdfDictionary reference] }
        && ObjectEquality.AreEqual(reference, SignatureDictionary.Certification);

    private static string? Name(PdfDocument document, PdfObject? value) =>
        (document.Resolve(value) as PdfName)?.Value;
}
