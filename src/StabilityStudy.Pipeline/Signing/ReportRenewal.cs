using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>A renewed report, or why it was not renewed.</summary>
public abstract record RenewalAttempt
{
    private RenewalAttempt() { }

    /// <summary>The report with more proof.</summary>
    /// <param name="Report">The bytes of the file.</param>
    /// <param name="Added">What was added, whole sentences.</param>
    public sealed record Done(ReadOnlyMemory<byte> Report, ImmutableArray<string> Added)
        : RenewalAttempt;

    /// <summary>It was not renewed; the file is as it was.</summary>
    /// <param name="Why">What stands in the way, in words.</param>
    public sealed record Refused(string Why) : RenewalAttempt;
}

/// <summary>Keeps the signatures of a report provable after their certificates have ended.</summary>
public static class ReportRenewal
{
    /// <summary>Renews a report that verifies.</summary>
    /// <param name="report">The bytes of the file.</param>
    /// <param name="options">Whom to trust, and the lists of revoked certificates to be kept.</param>
    /// <param name="source">Where an archive time stamp comes from; null for none.</param>
    public static RenewalAttempt Renew(
        ReadOnlyMemory<byte> report,
        VerificationOptions options,
        TimeStampSource? source
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        // The first revision, from which all is computed, stays as it is.
        Recomputation? computed = null;
        Recomputation Once(AttachedStudy study) => computed ??= Recomputation.Of(study);

        var found = ReportVerifier.Verify(report, options, record: null, Once);
        if (found.Parts.FirstOrDefault(part => part.Outcome == PartOutcome.Fails) is { } failed)
        {
            return new RenewalAttempt.Refused(
                $"The report does not verify, and nothing makes it better: {failed.Sentences[0]}"
            );
        }

        var result = PdfRenewal.Renew(report, options, source);
        if (!result.TryGet(out var renewed, out var refusal))
        {
            return new RenewalAttempt.Refused(Of(refusal.Value, result.What));
        }

        var after = ReportVerifier.Verify(renewed, options, record: null, Once);
        return after.Parts.FirstOrDefault(part => part.Outcome == PartOutcome.Fails) is { } worse
            ? new RenewalAttempt.Refused(
                $"The renewed report would not verify: {worse.Sentences[0]}"
            )
            : new RenewalAttempt.Done(renewed, [.. Added(result)]);
    }

    private static IEnumerable<string> Added(RenewalResult result)
    {
        if (result.KeepsMore)
        {
            yield return "The certificates of all who signed, and what was given about revoked ones, are kept in the report.";
        }

        if (result.TimeStamp is { } stamp)
        {
            var ends = stamp
                .Chain.Certificates.Select(item => item.NotAfter)
                .Append(stamp.Authority.NotAfter)
                .Min();
            yield return $"An archive time stamp of {TrustWords.Time(stamp.Time)} by {stamp.Authority.Name} dates all of it. Renew the report again before {TrustWords.Time(ends)}, when the first of the certificates behind that time stamp ends.";
        }
    }

    private static string Of(RenewalRefusal refusal, string what) =>
        refusal switch
        {
            RenewalRefusal.DoesNotVerify => "The report does not verify. " + what,
            RenewalRefusal.NotTrusted =>
                "Not everybody who signed is trusted: give the certificates that you trust with --trust, and those for time-stamp authorities with --trust-time, so that what vouches for each signature can be kept.",
            RenewalRefusal.NothingToAdd =>
                "All that was given is in the report already. Give newer lists of revoked certificates or answers (OCSP) with --revoked, or the address of a time-stamp authority with --time-stamp.",
            RenewalRefusal.DataNotStamped =>
                "What was added last has no archive time stamp yet. Renew the report with --time-stamp and without new lists first.",
            RenewalRefusal.NoRoom =>
                "The report has no room for another archive time stamp: it was made by a version before 0.4.0, or all of its room is used. Certificates and lists can still be kept in it, without --time-stamp.",
            RenewalRefusal.TimeStampUnavailable => "The time-stamp authority gave no answer.",
            RenewalRefusal.TimeStampInvalid =>
                "The answer of the time-stamp authority is no time stamp of this report. " + what,
            RenewalRefusal.TimeStampTooLarge =>
                "The time stamp with its certificates is larger than the room for it. Ask another authority.",
        };
}
