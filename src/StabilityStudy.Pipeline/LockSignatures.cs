using System.Collections.Immutable;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline;

/// <summary>
/// How well each lock is shown: by a time stamp or a signature over its statement that is right, else by this computer's
/// clock only. Whether the signer or the authority is to be trusted is not asked here, and the report says so.
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
                Locks = [.. stored.All.Select(item => item.Lock with { Level = LevelOf(item) })],
            }
            : inputs;

    private static LockLevel LevelOf(StoredLock stored) =>
        IsStampedThen(stored) ? LockLevel.ByTimeStamp
        : IsSigned(stored) ? LockLevel.BySignature
        : LockLevel.ThisComputersClock;

    private static bool IsStampedThen(StoredLock stored) =>
        !stored.TimeStamp.IsEmpty
        && StatementVerifier.TimeStamp(
            stored.Statement(),
            stored.TimeStamp.AsMemory(),
            VerificationOptions.WithoutTrust
        )
            is { } stamp
        && (stamp.Time - stored.Lock.At).Duration() <= s_longestGap;

    private static bool IsSigned(StoredLock stored) =>
        !stored.Signature.IsEmpty
        && StatementVerifier.Signature(
            stored.Statement(),
            stored.Signature.AsMemory(),
            stored.Lock.At,
            VerificationOptions.WithoutTrust
        )
            is not null;
}
