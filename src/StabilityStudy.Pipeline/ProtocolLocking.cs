using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Queries;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline;

/// <summary>What came of locking a protocol.</summary>
public abstract record LockAttempt
{
    private LockAttempt() { }

    /// <summary>It is locked once the files are written.</summary>
    /// <param name="Protocol">The protocol.</param>
    /// <param name="Lock">The new lock.</param>
    /// <param name="LockFile">New content of protocol.lock.</param>
    /// <param name="Copy">The protocol, byte for byte, for the folder locked.</param>
    /// <param name="Queries">What the protocol leaves in doubt; none of them stops.</param>
    public sealed record Locked(
        StudyProtocol Protocol,
        ProtocolLock Lock,
        ReadOnlyMemory<byte> LockFile,
        ReadOnlyMemory<byte> Copy,
        ImmutableArray<DataQuery> Queries
    ) : LockAttempt;

    /// <summary>Nothing is wrong with the protocol, and it is not locked.</summary>
    public sealed record Refused(LockRefusal Why) : LockAttempt;

    /// <summary>Some time points will hardly be supported, and nobody accepted that.</summary>
    /// <param name="Plan">The plan with their chances.</param>
    public sealed record LowChance(StudyPlan Plan) : LockAttempt;

    /// <summary>It could not be signed or time-stamped as asked.</summary>
    /// <param name="Why">Why not, in words.</param>
    public sealed record NotProven(string Why) : LockAttempt;

    /// <summary>Queries stop it.</summary>
    public sealed record Stopped(ImmutableArray<DataQuery> Queries) : LockAttempt;
}

/// <summary>What came of judging a signed protocol document.</summary>
public abstract record ApprovalAttempt
{
    private ApprovalAttempt() { }

    /// <summary>It approves the protocol at hand.</summary>
    /// <param name="Approval">Who approved, and when.</param>
    /// <param name="LockNumber">The lock of this protocol; null where it is yet to be locked.</param>
    /// <param name="Reason">Why the protocol is amended, as the document states it; null where it amends nothing.</param>
    public sealed record Approved(ProtocolApproval Approval, int? LockNumber, string? Reason)
        : ApprovalAttempt;

    /// <summary>It does not.</summary>
    /// <param name="Why">Why not, in words.</param>
    public sealed record Refused(string Why) : ApprovalAttempt;
}

/// <summary>Why a protocol was not locked.</summary>
public enum LockRefusal
{
    /// <summary>This very protocol is locked already.</summary>
    AlreadyLocked,

    /// <summary>Another protocol was locked before, and no reason for the amendment is given.</summary>
    ReasonMissing,

    /// <summary>The clock is behind the time of the last lock, and locks that are not in order prove nothing.</summary>
    BeforeLastLock,
}

/// <summary>Locks protocols.</summary>
public static class ProtocolLocking
{
    private static bool StopsLock(DataQuery query) =>
        query.Kind == ProtocolQueries.FirstTimePointTooLate
        || query.Kind == ProtocolQueries.MeanWithoutLevels
        || query.Kind == ProtocolQueries.LeftToChange;

    /// <summary>What an analysis lives with, at best inconclusive, is put right before a lock.</summary>
    private static DataQuery StoppingLock(DataQuery query) =>
        StopsLock(query) ? query with { Rank = QueryRank.Stop } : query;

    /// <summary>Judges a signed protocol document of the protocol at hand, which everybody named in it must have signed.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="document">The bytes of the document.</param>
    public static ApprovalAttempt Approve(StudyBytes files, ReadOnlyMemory<byte> document)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (!files.Files.TryGetValue(StudyBytes.ProtocolName, out var protocol))
        {
            return new ApprovalAttempt.Refused($"There is no {StudyBytes.ProtocolName}.");
        }

        var hash = InputDigest.Sha256(protocol.Span);
        var (approval, stated, fault) = ProtocolApprovals.Read(document, hash);
        if (fault is not null)
        {
            return new ApprovalAttempt.Refused(fault);
        }

        if (approval is null)
        {
            return new ApprovalAttempt.Refused(
                "Not everybody whose place is on page 1 has signed the document."
            );
        }

        var last =
            files.Files.TryGetValue(LockFile.Name, out var bytes)
            && LockFile.Read(bytes).TryGet(out var locks)
            && !locks.All.IsEmpty
                ? locks.All[^1].Lock
                : null;
        int? locked = last?.ProtocolSha256 == hash ? last.Number : null;
        if (
            Amendments.FaultOf(stated, locked ?? (last?.Number ?? 0) + 1, files) is
            { Why: var other }
        )
        {
            return new ApprovalAttempt.Refused(
                other + (stated is null ? " Make it with plan --document FILE --reason TEXT." : "")
            );
        }

        return
            ProtocolDocumentFile.TryRead(document, out var read, out _)
            && DrawnDocumentVerifier.Pages(
                read,
                SignatureVerifier.Verify(document, VerificationOptions.WithoutTrust)
            )
                is { Outcome: PartOutcome.Fails, Sentences: [var why, ..] }
            ? new ApprovalAttempt.Refused(why)
            : new ApprovalAttempt.Approved(approval, locked, stated?.Reason);
    }

    /// <summary>Locks the protocol of a study.</summary>
    /// <param name="files">The files of the study folder; of the data nothing is read.</param>
    /// <param name="by">Who locks.</param>
    /// <param name="at">When, by this computer's clock.</param>
    /// <param name="reason">Why the protocol is amended; null for a first lock.</param>
    /// <param name="lowChanceAccepted">Why time points that will hardly be supported are studied all the same; null where nobody says so.</param>
    /// <param name="key">Signs the lock; null for none.</param>
    /// <param name="timeStamp">Where a time stamp comes from; null for none.</param>
    public static LockAttempt Lock(
        StudyBytes files,
        string by,
        DateTimeOffset at,
        string? reason,
        string? lowChanceAccepted = null,
        SigningKey? key = null,
        TimeStampSource? timeStamp = null
    )
    {
        ArgumentNullException.ThrowIfNull(files);
        if (!files.Files.TryGetValue(StudyBytes.ProtocolName, out var bytes))
        {
            return new LockAttempt.Stopped([
                .. StudyPipeline
                    .Check(files)
                    .Queries.Where(query => query.Source.File == StudyBytes.ProtocolName),
            ]);
        }

        if (EndedStudies.QueryOf(files) is { } ended)
        {
            return new LockAttempt.Stopped([ended]);
        }

        var protocol = ProtocolReader.Read(bytes, StudyBytes.ProtocolName);
        var before = files.Files.TryGetValue(LockFile.Name, out var lockBytes)
            ? LockFile.Read(lockBytes)
            : Outcome.Of(StoredLocks.None, []);
        ImmutableArray<DataQuery> queries = [.. protocol.Queries, .. before.Queries];
        if (!protocol.TryGet(out var read) || !before.TryGet(out var locks))
        {
            return new LockAttempt.Stopped(queries);
        }

        if (queries.Any(StopsLock))
        {
            return new LockAttempt.Stopped([.. queries.Select(StoppingLock)]);
        }

        var hash = InputDigest.Sha256(bytes.Span);
        if (!locks.All.IsEmpty && locks.All[^1].Lock.ProtocolSha256 == hash)
        {
            return new LockAttempt.Refused(LockRefusal.AlreadyLocked);
        }

        if (!locks.All.IsEmpty && at < locks.All[^1].Lock.At)
        {
            return new LockAttempt.Refused(LockRefusal.BeforeLastLock);
        }

        if (!locks.All.IsEmpty && reason is null)
        {
            return new LockAttempt.Refused(LockRefusal.ReasonMissing);
        }

        var plan = StudyPlanner.Of(read, PlanRequest.Usual);
        var hasLowChance = !LowChances.Of(plan).IsEmpty;
        if (hasLowChance && lowChanceAccepted is null)
        {
            return new LockAttempt.LowChance(plan);
        }

        var number = locks.All.Length + 1;
        var added = new StoredLock(
            new ProtocolLock(number, hash, at, by, number == 1 ? null : reason)
            {
                LowChanceAccepted = hasLowChance ? lowChanceAccepted : null,
                Differences =
                    number == 1 ? null : LockedProtocols.Against(locks.All[^1].Lock, files.Files),
            },
            locks.LastHash,
            [],
            []
        );
        if (key?.Certificate.ProblemAt(at) is { } problem)
        {
            return new LockAttempt.NotProven(SigningWords.Of(problem));
        }

        if (key is not null)
        {
            added = added with
            {
                Signature = [.. StatementSigner.Sign(added.Statement(), key).Span],
            };
        }

        if (timeStamp is not null)
        {
            if (
                !StatementSigner
                    .Stamp(added.Statement(), timeStamp)
                    .TryGet(out var token, out var failure)
            )
            {
                return new LockAttempt.NotProven(failure.What);
            }

            added = added with { TimeStamp = [.. token.Span] };
        }

        return new LockAttempt.Locked(
            read,
            added.Lock with
            {
                Level =
                    timeStamp is not null ? LockLevel.ByTimeStamp
                    : key is not null ? LockLevel.BySignature
                    : LockLevel.ThisComputersClock,
            },
            LockFile.With(locks, added),
            bytes,
            queries
        );
    }
}
