using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;

namespace StabilityStudy.Pipeline;

/// <summary>
/// How well each lock is shown: by a time stamp or a signature over its statement that is right, else by this computer's
/// clock only. Whether the signer or the authority is trusted is another question, which verification answers.
/// </summary>
internal static class LockSignatures
{
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
        StampedBeside(stored) ? LockLevel.ByTimeStamp
        : IsSigned(stored) ? LockLevel.BySignature
        : LockLevel.ThisComputersClock;

    /// <summary>A time stamp proves that the statement existed at its time; it must not be long after the time that the lock states.</summary>
    private static bool StampedBeside(StoredLock stored) =>
        !stored.TimeStamp.IsEmpty
        && Rfc3161TimestampToken.TryDecode(stored.TimeStamp.ToArray(), out var token, out var read)
        && read == stored.TimeStamp.Length
        && token.VerifySignatureForData(stored.Statement().Span, out _)
        && (token.TokenInfo.Timestamp - stored.Lock.At).Duration() <= TimeSpan.FromHours(1);

    private static bool IsSigned(StoredLock stored)
    {
        if (stored.Signature.IsEmpty)
        {
            return false;
        }

        try
        {
            var signature = new SignedCms(new ContentInfo(stored.Statement().ToArray()), true);
            signature.Decode(stored.Signature.ToArray());
            signature.CheckSignature(verifySignatureOnly: true);
            return signature.SignerInfos.Count == 1;
        }
        catch (CryptographicException)
        {
            // The library's only way to say that a signature is wrong or damaged.
            return false;
        }
    }
}
