using StabilityStudy.Core.Queries;

namespace StabilityStudy.Core.Locking;

/// <summary>What the locks of a study leave in doubt.</summary>
internal static class LockQueries
{
    private const string LockFile = "protocol.lock";

    public static IEnumerable<DataQuery> Of(LockEvidence evidence)
    {
        switch (evidence.Standing)
        {
            case LockStanding.ProtocolChanged:
                yield return Query(
                    "protocol-changed-after-lock",
                    "The protocol is not the one that was locked last.",
                    "Put the locked protocol back (a copy stands in the folder locked), or lock the new one with the reason for the amendment."
                );
                break;
            case LockStanding.AfterFirstCollection:
                yield return Query(
                    "locked-after-first-collection",
                    "The protocol was locked when specimens had already been collected, so the lock does not show that the criteria came first.",
                    "Say in a deviation why; lock the protocol of the next study before its first collection."
                );
                break;
        }

        if (evidence.Locks.Length > 1)
        {
            yield return Query(
                "protocol-amended",
                FormattableString.Invariant(
                    $"The protocol was amended {evidence.Locks.Length - 1} times after its first lock; the last reason: {evidence.Locks[^1].Reason}"
                ),
                "Read the reasons in protocol.lock and the versions in the folder locked."
            );
        }
    }

    private static DataQuery Query(string code, string message, string action) =>
        new(code, Severity.Attention, new QuerySource(LockFile, null, null), "", message, action);
}
