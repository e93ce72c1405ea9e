using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Pipeline.Protocols;

/// <summary>Amendments of a locked protocol: what their documents must state, and whether they do.</summary>
internal static class Amendments
{
    /// <summary>What the document of the protocol at hand must state; null for a protocol that amends nothing.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="reason">Why it is amended; null where nobody says.</param>
    /// <param name="on">Today.</param>
    /// <param name="amends">What it amends.</param>
    /// <param name="fault">Why there can be no document, in words.</param>
    public static bool TryMake(
        StudyBytes files,
        string? reason,
        DateOnly on,
        out AmendedProtocol? amends,
        [NotNullWhen(false)] out string? fault
    )
    {
        amends = null;
        fault = null;
        if (!LocksOf(files, out var locks, out fault))
        {
            return false;
        }

        var hash = InputDigest.Sha256(files.Files[StudyBytes.ProtocolName].Span);
        var isLocked = !locks.IsEmpty && locks[^1].Lock.ProtocolSha256 == hash;
        var number = isLocked ? locks.Length : locks.Length + 1;
        if (number == 1)
        {
            fault = reason is null
                ? null
                : "The protocol amends no locked one, so that it needs no reason: leave --reason away.";
            return fault is null;
        }

        var lockedFor = isLocked ? locks[^1].Lock.Reason : null;
        reason ??= lockedFor;
        fault =
            reason is null
                ? FormattableString.Invariant(
                    $"This protocol amends the one of lock {number - 1}. Give the reason with --reason: it stands in the document and in the lock."
                )
            : isLocked && reason != lockedFor
                ? FormattableString.Invariant(
                    $"The protocol is locked (lock {number}) for another reason: \"{lockedFor}\". Leave --reason away."
                )
            : null;
        if (fault is not null)
        {
            return false;
        }

        var earlier = locks[number - 2];
        if (
            LockedProtocols.BytesOf(earlier.Lock, files.Files) is not { } before
            || LockedProtocols.Between(before, files.Files[StudyBytes.ProtocolName])
                is not { } changes
        )
        {
            fault = FormattableString.Invariant(
                $"{LockFile.CopyName(number - 1)} is not at hand, or is not the protocol of lock {number - 1}: what changed cannot be shown. Put the copy back."
            );
            return false;
        }

        amends = new AmendedProtocol(
            new ProtocolAmendment(
                number,
                on,
                reason!,
                earlier.Lock.ProtocolSha256,
                earlier.StatementHash(),
                DocumentHash(files, number - 1),
                changes
            ),
            before
        );
        return true;
    }

    /// <summary>Whether the document beside a lock states the amendment that this lock is; null where it does, or where there is nothing to state.</summary>
    /// <param name="stated">What the document states; null where it is no amendment.</param>
    /// <param name="number">Number of the lock that the protocol has, or gets.</param>
    /// <param name="files">The files of the study, or of the report.</param>
    /// <returns>What is wrong and how bad it is.</returns>
    public static (PartOutcome Outcome, string Why)? FaultOf(
        ProtocolAmendment? stated,
        int number,
        StudyBytes files
    )
    {
        if (stated is null)
        {
            return number == 1
                ? null
                : (
                    PartOutcome.NotChecked,
                    FormattableString.Invariant(
                        $"The document does not say what was changed against lock {number - 1}: it is not that of an amendment."
                    )
                );
        }

        if (!LocksOf(files, out var locks, out var fault))
        {
            return (PartOutcome.Fails, fault);
        }

        if (stated.LockNumber != number || number > locks.Length + 1)
        {
            return (
                PartOutcome.Fails,
                FormattableString.Invariant(
                    $"The document is that of amendment {stated.Number}, of lock {stated.EarlierLockNumber}, and the protocol is that of lock {number}."
                )
            );
        }

        var earlier = locks[number - 2];
        return stated.EarlierProtocolSha256 != earlier.Lock.ProtocolSha256
            || stated.EarlierLockSha256 != earlier.StatementHash()
                ? (
                    PartOutcome.Fails,
                    FormattableString.Invariant(
                        $"The document amends another protocol than the one of lock {number - 1}."
                    )
                )
            : number <= locks.Length && locks[number - 1].Lock.Reason != stated.Reason
                ? (
                    PartOutcome.Fails,
                    FormattableString.Invariant(
                        $"The document states another reason than lock {number}."
                    )
                )
            : stated.EarlierDocumentSha256 is { } document
            && DocumentHash(files, number - 1) != document
                ? (
                    PartOutcome.Fails,
                    FormattableString.Invariant(
                        $"The signed protocol document of lock {number - 1} that the amendment names is another one, or is missing."
                    )
                )
            : null;
    }

    private static string? DocumentHash(StudyBytes files, int number) =>
        files.Files.TryGetValue(LockedProtocols.StoredDocumentName(number), out var bytes)
            ? InputDigest.Sha256(bytes.Span)
            : null;

    private static bool LocksOf(
        StudyBytes files,
        out ImmutableArray<StoredLock> locks,
        [NotNullWhen(false)] out string? fault
    )
    {
        locks = [];
        fault = null;
        if (!files.Files.TryGetValue(LockFile.Name, out var bytes))
        {
            return true;
        }

        var read = LockFile.Read(bytes);
        if (!read.TryGet(out var found))
        {
            fault = $"{LockFile.Name} cannot be read: {read.Queries[0].Message}";
            return false;
        }

        locks = found.All;
        return true;
    }
}
