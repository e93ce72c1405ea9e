using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Text;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>Reads what came back from the program that holds the key, and says in which way it is not what was asked for.</summary>
internal static class SigningAnswer
{
    /// <summary>The signature in DER; null where it is not one that may be put in.</summary>
    /// <param name="order">The answer, and for whom it was prepared.</param>
    /// <param name="document">What was to be signed.</param>
    /// <param name="preparedAt">The time that the signature claims.</param>
    /// <param name="fault">What is wrong, and what to do.</param>
    public static ReadOnlyMemory<byte>? Read(
        CompletionOrder order,
        PreparedDocument document,
        DateTimeOffset preparedAt,
        out string fault
    )
    {
        var answer = Unwrapped(order.Answer);
        if (!IsWhole(answer.Span, AsnEncodingRules.DER))
        {
            fault = IsWhole(answer.Span, AsnEncodingRules.BER)
                ? "The answer is written in BER, which can say one thing in several ways. Have it written in DER (openssl cms: -outform DER, without -stream)."
                : "The answer is no CMS signature, or is damaged. Give the file that the signing program wrote, in DER or PEM.";
            return null;
        }

        var found = StatementVerifier.Signature(
            document.ToSign,
            answer,
            preparedAt,
            VerificationOptions.WithoutTrust
        );
        if (found.Signer is { } signer && signer.Sha256 != order.Certificate.Sha256)
        {
            fault =
                $"The answer is signed with another certificate ({signer.Name}, number {signer.SerialNumber}) than the one that the stamp names ({order.Certificate.Name}, number {order.Certificate.SerialNumber}). Sign with the key of that one, or prepare the signature for the other.";
            return null;
        }

        if (found.Problems is [var problem, ..])
        {
            fault = "The answer cannot be used: " + Of(problem) + ".";
            return null;
        }

        if (order.TimeStamp is not null && IsStamped(answer.Span))
        {
            fault = "The answer holds a time stamp already. Leave --time-stamp away.";
            return null;
        }

        fault = "";
        return answer;
    }

    /// <summary>The problem, and for those that come from how the answer was made, what to change.</summary>
    private static string Of(SignatureProblem problem) =>
        problem switch
        {
            SignatureProblem.DigestMismatch =>
                "it signs other bytes than those of to-sign.bin. Sign exactly that file (openssl cms: -binary)",
            SignatureProblem.ContainerMalformed =>
                "it is not a CMS signature by one signer, detached (openssl cms: without -nodetach), with its certificate (without -nocerts), with signed attributes (without -noattr), with nothing unsigned but a time stamp, and in DER throughout",
            SignatureProblem.SigningCertificateMissing =>
                "it does not name its certificate in what is signed (openssl cms: -cades)",
            SignatureProblem.AlgorithmNotSupported => ProblemWords.Of(problem)
                + ". Sign with SHA-256 (openssl cms: -md sha256)",
            SignatureProblem.CertificateMissing => ProblemWords.Of(problem)
                + " (openssl cms: without -nocerts)",
            SignatureProblem.SignerNamedByKey => ProblemWords.Of(problem)
                + " (openssl cms: without -keyid)",
            SignatureProblem.DictionaryNotSupported
            or SignatureProblem.ByteRangeMalformed
            or SignatureProblem.ByteRangeStart
            or SignatureProblem.ByteRangeGap
            or SignatureProblem.ByteRangeEnd
            or SignatureProblem.RevisionSignedByAnother
            or SignatureProblem.NotSignedYet
            or SignatureProblem.PaddingNotZero
            or SignatureProblem.KeyNotStrong
            or SignatureProblem.CertificateNotStrong
            or SignatureProblem.SignatureMismatch
            or SignatureProblem.SigningCertificateMismatch
            or SignatureProblem.SigningTimeMissing
            or SignatureProblem.CertificateNotYetValid
            or SignatureProblem.CertificateExpired
            or SignatureProblem.KeyUsageLacksSigning
            or SignatureProblem.TimeStampInvalid
            or SignatureProblem.TimeStampNotStrong
            or SignatureProblem.DatedInFuture
            or SignatureProblem.TimeStampBeforeSigning => ProblemWords.Of(problem),
        };

    /// <summary>What PEM holds; anything else as it is.</summary>
    private static ReadOnlyMemory<byte> Unwrapped(ReadOnlyMemory<byte> answer)
    {
        var text = Encoding.Latin1.GetString(answer.Span);
        return PemEncoding.TryFind(text, out var fields)
            ? Convert.FromBase64String(text[fields.Base64Data])
            : answer;
    }

    private static bool IsWhole(ReadOnlySpan<byte> answer, AsnEncodingRules rules) =>
        AsnDecoder.TryReadEncodedValue(answer, rules, out _, out _, out _, out var length)
        && length == answer.Length;

    private static bool IsStamped(ReadOnlySpan<byte> answer)
    {
        var container = new SignedCms();
        container.Decode(answer);
        return container.SignerInfos[0].UnsignedAttributes.Count > 0;
    }
}
