using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Locking;

/// <summary>What the locks of a study leave in doubt.</summary>
internal static class LockQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ProtocolChangedAfterLock = Kinds.Add("protocol-changed-after-lock", QueryRank.StatedAnyway, "the protocol is not the one that was locked last", "put the locked protocol back, or lock the new one with the reason for the amendment");
    internal static readonly QueryKind LockedAfterFirstCollection = Kinds.Add("locked-after-first-collection", QueryRank.StatedAnyway, "the protocol was locked when specimens had already been collected", "say in a deviation why; lock the next protocol before the first collection");
    internal static readonly QueryKind LockEvidenceDoesNotFit = Kinds.Add("lock-evidence-does-not-fit", QueryRank.StatedAnyway, "a signature or time stamp in protocol.lock, or a signed protocol document, is not right, or a time stamp is of another time than the lock states", "put the file back as the program wrote it; find out who changed it or whose clock was wrong");
    internal static readonly QueryKind ApprovedAfterFirstCollection = Kinds.Add("approved-after-first-collection", QueryRank.StatedAnyway, "the protocol document was signed by whoever decides when specimens had already been collected", "say in a deviation why; let the next protocol be signed before the first collection");
    internal static readonly QueryKind LocksOutOfOrder = Kinds.Add("locks-out-of-order", QueryRank.StatedAnyway, "a lock in protocol.lock states a time before that of the lock it amends", "put the file back as the program wrote it; find out who changed it or whose clock was wrong");
    internal static readonly QueryKind ProtocolAmended = Kinds.Add("protocol-amended", QueryRank.Record, "the protocol was amended after its first lock", "read the reasons in protocol.lock and the versions in the folder locked");
    internal static readonly QueryKind LockByUnknown = Kinds.Add("lock-by-unknown", QueryRank.Record, "the protocol was locked by somebody who is not among the people of study.toml", "add the person to study.toml, or find out who locked the protocol");
    // csharpier-ignore-end

    private const string LockFile = "protocol.lock";

    /// <param name="evidence">What the locks say.</param>
    /// <param name="people">The people of the study, by code or name of whom each lock should be.</param>
    public static IEnumerable<DataQuery> Of(LockEvidence evidence, ImmutableArray<Person> people)
    {
        switch (evidence.Standing)
        {
            case LockStanding.ProtocolChanged:
                yield return Query(
                    ProtocolChangedAfterLock,
                    "The protocol is not the one that was locked last.",
                    "Put the locked protocol back (a copy stands in the folder locked), or lock the new one with the reason for the amendment."
                );
                break;
            case LockStanding.Contradicted:
                yield return Query(
                    LockEvidenceDoesNotFit,
                    "A signature or time stamp in protocol.lock, or a signed protocol document in the folder locked, is not right, or a time stamp is of a time more than an hour from the stated one: it speaks against the lock, not for it.",
                    "Put the file back as the program wrote it; find out who changed it or whose clock was wrong, and say so in a deviation."
                );
                break;
            case LockStanding.OutOfOrder:
                yield return Query(
                    LocksOutOfOrder,
                    "A lock in protocol.lock states a time before that of the lock it amends, so the times do not show that the criteria came first.",
                    "Put the file back as the program wrote it; find out who changed it or whose clock was wrong, and say so in a deviation."
                );
                break;
            case LockStanding.AfterFirstCollection:
                yield return Query(
                    LockedAfterFirstCollection,
                    "The protocol was locked when specimens had already been collected, so the lock does not show that the criteria came first.",
                    "Say in a deviation why; lock the protocol of the next study before its first collection."
                );
                break;
        }

        if (evidence.Approval is { } approval && !evidence.IsApprovedInTime)
        {
            yield return Query(
                ApprovedAfterFirstCollection,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{approval.By} ({approval.Role}) signed the protocol document on {approval.Latest:yyyy-MM-dd}, when specimens had already been collected: that approves nothing beforehand."
                ),
                "Say in a deviation why; let the next protocol be signed before the first collection."
            );
        }

        foreach (
            var unknown in evidence
                .Locks.Select(item => item.By)
                .Distinct(StringComparer.Ordinal)
                .Where(by => !people.Any(person => by == person.Code || by == person.Name))
        )
        {
            yield return Query(
                LockByUnknown,
                $"The protocol was locked by \"{unknown}\", who is not among the people of study.toml.",
                "Add the person to study.toml with name and role, or find out who locked the protocol."
            );
        }

        if (evidence.Locks.Length > 1)
        {
            var amendments = evidence.Locks.Skip(1).ToImmutableArray();
            yield return Query(
                ProtocolAmended,
                FormattableString.Invariant(
                    $"The protocol was amended {Counted.Of(amendments.Length, "time")} after its first lock ({(amendments.All(item => item.KeepsRules) ? "criteria unchanged" : "not only planned numbers differ, or a copy is missing")}). The last reason: {evidence.Locks[^1].Reason}"
                )
            );
        }
    }

    private static DataQuery Query(QueryKind kind, string message, string? action = null) =>
        new(kind, new QuerySource(LockFile, null, null), "", message, action);
}
