using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>
/// Puts signatures that were made elsewhere into reports that were prepared for them. What was prepared is made again from the report and compared, so that
/// every rule of signing holds at this moment too and nothing in the prepared file needs to be believed.
/// </summary>
public static class ReportCompletion
{
    private const string Again = "Prepare the signature again (sign --prepare).";

    /// <summary>The stamp says when it was prepared; later than that nobody would have signed at about that time.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromDays(1);

    /// <summary>Puts the signature in.</summary>
    /// <param name="order">The files, and when.</param>
    public static SigningAttempt Complete(CompletionOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var place = SignatureVerifier
            .Verify(order.Prepared, VerificationOptions.WithoutTrust)
            .Signatures.FirstOrDefault(item =>
                item.Problems.Contains(SignatureProblem.NotSignedYet)
            );
        if (place is null)
        {
            return new SigningAttempt.Refused(
                "The file is not prepared for a signature, or has one already: --complete goes with the file prepared.pdf that --prepare wrote."
            );
        }

        if (
            place is not { ClaimedTime: { } preparedAt, SignerName: { } name }
            || SignedStatement.Read(place.Statement)
                is not StatementReading.Read { Statement: var statement }
            || statement.ToolVersion != ToolVersion.Current
        )
        {
            return new SigningAttempt.Refused(
                "The file was changed, or another version of the program prepared it. " + Again
            );
        }

        if (WhyNot(order, preparedAt, statement) is { } why)
        {
            return new SigningAttempt.Refused(why);
        }

        var attempt = ReportSigning.Prepare(
            order.Report,
            order.Certificate,
            new SigningOrder(statement.Role, preparedAt, name, statement.Credentials, null)
            {
                AcceptsNotRecomputed = !statement.AcceptedNotRecomputed.IsEmpty,
                RecordSha256 = statement.RecordSha256,
            },
            (subject, signatory) =>
                (
                    statement.Decision,
                    subject.FaultOf(
                        signatory,
                        statement.Decision,
                        SignedStatement.CurrentFormat,
                        DateOnly.FromDateTime(preparedAt.DateTime)
                    ) == DecisionFault.None
                        ? null
                        : "The decision in the file is not one that may be signed. " + Again
                )
        );
        return attempt is not SigningAttempt.Prepared prepared ? attempt
            : !prepared.Document.Bytes.Span.SequenceEqual(order.Prepared.Span)
                ? new SigningAttempt.Refused(
                    "The file is not what is prepared from the report for this certificate: one of them was changed. "
                        + Again
                )
            : SigningAnswer.Read(order, prepared.Document, preparedAt, out var fault)
                is not { } signature
                ? new SigningAttempt.Refused(fault)
            : prepared.With(PdfSigner.Complete(prepared.Document, signature, order.TimeStamp));
    }

    /// <summary>What has changed since the signature was prepared, so that it may no longer be put in; null for nothing.</summary>
    private static string? WhyNot(
        CompletionOrder order,
        DateTimeOffset preparedAt,
        SignedStatement statement
    ) =>
        !order.Prepared.Span.StartsWith(order.Report.Span)
            ? "The report was changed or signed since the signature was prepared. " + Again
        : order.At < preparedAt
            ? "The signature was prepared at a time that is after the one of this computer's clock. Set the clock right."
        : order.At > preparedAt + s_longest
            ? "The signature was prepared more than a day ago, and its stamp states that time. "
                + Again
        : order.Certificate.ProblemAt(order.At) is { } problem ? SigningWords.Of(problem)
        : statement.Decision is { } decision
        && (order.Earlier?.At, order.Earlier?.By, order.Earlier?.Words)
            != (decision.Earlier?.At, decision.Earlier?.By, decision.Earlier?.Words)
            ? "Another decision on this study was recorded since the signature was prepared. "
                + Again
        : null;
}
