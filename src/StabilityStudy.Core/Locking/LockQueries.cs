using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Locking;

/// <summary>What the locks of a study leave in doubt.</summary>
internal static class LockQueries
{
    private const string LockFile = "protocol.lock";

    /// <param name="evidence">What the locks say.</param>
    /// <param name="people">The people of the study, by code or name of whom each lock should be.</param>
    public static IEnumerable<DataQuery> Of(LockEvidence evidence, ImmutableArray<Person> people)
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
            case LockStanding.Contradicted:
                yield return Query(
                    "lock-evidence-does-not-fit",
                    "A signature or time stamp in protocol.lock is not right, or stamps a time more than an hour from the stated one: it speaks against the lock, not for it.",
                    "Put the file back as the program wrote it; find out who changed it or whose clock was wrong, and say so in a deviation."
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

        foreach (
            var unknown in evidence
                .Locks.Select(item => item.By)
                .Distinct(StringComparer.Ordinal)
                .Where(by => !people.Any(person => by == person.Code || by == person.Name))
        )
        {
            yield return Query(
                "lock-by-unknown",
                $"The protocol was locked by \"{unknown}\", who is not among the people of study.toml.",
                "Add the person to study.toml with name and role, or find out who locked the protocol."
            );
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
