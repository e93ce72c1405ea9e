using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>What is wrong with a signature, a document or a revision, for a reader who knows no file format.</summary>
internal static class ProblemWords
{
    public static string Of(SignatureProblem problem) =>
        problem switch
        {
            SignatureProblem.DigestMismatch =>
                "the file is not the one that was signed: bytes were changed",
            SignatureProblem.SignatureMismatch =>
                "the signature was not made with the key of its certificate",
            SignatureProblem.ByteRangeMalformed
            or SignatureProblem.ByteRangeStart
            or SignatureProblem.ByteRangeGap
            or SignatureProblem.ByteRangeEnd => "the signature does not cover the whole file",
            SignatureProblem.RevisionSignedByAnother =>
                "another signature claims the same addition to the file",
            SignatureProblem.NotSignedYet =>
                "prepared, but not signed yet: the place of the signature is empty",
            SignatureProblem.PaddingNotZero => "bytes are hidden in the room of the signature",
            SignatureProblem.DictionaryNotSupported =>
                "the signature is of another kind than this program makes",
            SignatureProblem.ContainerMalformed => "the signature is damaged",
            SignatureProblem.SignerNamedByKey =>
                "the signature names its signer by a key identifier, which is not checked here: it must name the issuer and serial number of the certificate",
            SignatureProblem.AlgorithmNotSupported =>
                "the signature is made with a method that is no longer safe, as with MD5 or SHA-1, or is not known here",
            SignatureProblem.KeyNotStrong =>
                "the key of the signer's certificate is too short or of another kind than is accepted: "
                    + TrustWords.KeyRule,
            SignatureProblem.CertificateNotStrong =>
                "the signer's certificate was issued with a method that is no longer safe, as with MD5 or SHA-1, or is not known here",
            SignatureProblem.CertificateMissing => "the signer's certificate is missing",
            SignatureProblem.SigningCertificateMissing
            or SignatureProblem.SigningCertificateMismatch =>
                "the signature does not name the certificate that it comes with",
            SignatureProblem.SigningTimeMissing => "the time of signing is missing",
            SignatureProblem.CertificateNotYetValid =>
                "the certificate was not valid yet at the time of signing",
            SignatureProblem.CertificateExpired =>
                "the certificate was no longer valid at the time of signing",
            SignatureProblem.KeyUsageLacksSigning =>
                "the certificate is not meant for signing documents",
            SignatureProblem.TimeStampInvalid =>
                "its time stamp is damaged or of another signature",
            SignatureProblem.TimeStampNotStrong =>
                "its time stamp is made with a key or method that is no longer safe, as with MD5 or SHA-1, or is not known here",
            SignatureProblem.DatedInFuture =>
                "its time lies after this verification: the clock of the signer or that of this computer is wrong",
            SignatureProblem.TimeStampBeforeSigning =>
                "its time stamp is earlier than the time that the signature claims",
        };

    public static string Of(DocumentProblem problem) =>
        problem switch
        {
            DocumentProblem.Unreadable => "The file cannot be read.",
            DocumentProblem.BytesAfterEnd => "There are bytes after the end of the file.",
            DocumentProblem.FormMalformed => "The signature form was tampered with.",
            DocumentProblem.FieldNotUnique => "Two fields share a name or a signature.",
            DocumentProblem.SignatureWithoutField => "There is a signature that no field shows.",
            DocumentProblem.LastRevisionNotSigned =>
                "Something was added after the last signature; no signature covers the file to its end.",
            DocumentProblem.RevisionNotSigned =>
                "Something was added to the file that nobody signed.",
            DocumentProblem.RevisionSignedTwice => "Two signatures claim the same addition.",
            DocumentProblem.RevisionNotInForm =>
                "An addition has another form than signing gives it, so that programs may show it differently.",
            DocumentProblem.ValidationDataMalformed =>
                "Among what is kept to judge the signatures later there is something that is no certificate and no list of revoked ones.",
            DocumentProblem.CertificationMissing =>
                "The first signature does not forbid later changes, as it must.",
        };

    public static string Of(int revision, RevisionDifference difference)
    {
        var part = difference.Part.ToString();
        var change = difference.Change switch
        {
            RevisionChange.Added => "was added",
            RevisionChange.Removed => "was removed",
            RevisionChange.Changed => "was changed",
        };
        var entry = difference.Entry is { } name ? $" ({name})" : "";
        return FormattableString.Invariant(
            $"With addition {revision - 1} more was done than signing: {part}{entry} {change}."
        );
    }
}
