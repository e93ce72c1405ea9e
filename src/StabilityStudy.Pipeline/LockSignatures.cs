using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline;

/// <summary>
/// How well each lock is shown: by a signed protocol document, by a time stamp or a signature over its statement that is right, else by this computer's
/// clock only; one that is there and not right speaks against the lock. Whether the signer or the authority is to be trusted is not asked here, and the report says so.
/// </summary>
internal static class LockSignatures
{
    /// <summary>A time stamp is asked for when the lock is made; one of much later would prove another time than the lock states.</summary>
    private static readonly TimeSpan s_longestGap = TimeSpan.FromHours(1);

    /// <summary>The inputs with the level of each lock as it was found.</summary>
    public static StudyInputs Checked(StudyInputs inputs, StudyBytes files) =>
        files.Files.TryGetValue(LockFile.Name, out var bytes)
        && LockFile.Read(bytes).TryGet(out var stored)
            ? inputs with
            {
                Locks =
                [
                    .. inputs
                        .Locks.Zip(stored.All, Found)
                        .Select(item => ProtocolApprovals.With(item, files)),
                ],
            }
            : inputs;

    private static ProtocolLock Found(ProtocolLock read, StoredLock stored)
    {
        var stamp = Stamp(stored);
        var level =
            IsContradicted(stored, stamp) ? LockLevel.Contradicted
            : stamp is not null ? LockLevel.ByTimeStamp
            : !stored.Signature.IsEmpty ? LockLevel.BySignature
            : LockLevel.ThisComputersClock;
        return read with { Level = level, StampedAt = stamp?.Time };
    }

    /// <summary>Whether a signature or time stamp that is there is not right, or of another time: evidence against the lock.</summary>
    private static bool IsContradicted(StoredLock stored, TimeStampVerification? stamp) =>
        (
            !stored.TimeStamp.IsEmpty
            && !(stamp is not null && (stamp.Time - stored.Lock.At).Duration() <= s_longestGap)
        ) || (!stored.Signature.IsEmpty && !IsSigned(stored));

    private static TimeStampVerification? Stamp(StoredLock stored) =>
        stored.TimeStamp.IsEmpty
            ? null
            : StatementVerifier.TimeStamp(
                stored.Statement(),
                stored.TimeStamp.AsMemory(),
                VerificationOptions.WithoutTrust,
                out _
            );

    private static bool IsSigned(StoredLock stored) =>
        StatementVerifier
            .Signature(
                stored.Statement(),
                stored.Signature.AsMemory(),
                stored.Lock.At,
                VerificationOptions.WithoutTrust
            )
            .Holds;
}
