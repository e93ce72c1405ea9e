using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Whether the criteria came before the data, in one sentence.</summary>
internal static class LockWords
{
    /// <summary>A whole sentence for page 1.</summary>
    public static string Of(LockEvidence evidence)
    {
        if (evidence.Locks.IsEmpty)
        {
            return "Not locked: nothing shows that the criteria came before the data.";
        }

        var last =
            evidence.Standing == LockStanding.BeforeFirstCollection
                ? LockEvidence.RulesLockedLast(evidence.Locks)
                : evidence.Locks[^1];
        var sameDay = evidence.FirstCollection is { } collected && collected.Date == last.At.Date;
        string Time(DateTimeOffset time) =>
            time.ToString(
                sameDay ? "yyyy-MM-dd HH:mm zzz" : "yyyy-MM-dd",
                CultureInfo.InvariantCulture
            );
        var locked =
            $"{(last.Number == 1 ? "ocked" : "ocked again after an amendment,")} {Time(last.At)} by {last.By}";
        return evidence.Standing switch
        {
            LockStanding.ProtocolChanged =>
                $"Changed since it was locked: this is not the protocol l{locked}.",
            LockStanding.Contradicted =>
                $"L{locked}, but a signature or time stamp of the lock does not fit it: nothing shows that the criteria came before the data.",
            LockStanding.OutOfOrder =>
                $"L{locked}, but a lock states a time before that of the lock it amends: nothing shows that the criteria came before the data.",
            LockStanding.AfterFirstCollection =>
                $"L{locked}, after the first collection ({Time(evidence.FirstCollection!.Value)}): nothing shows that the criteria came before the data.",
            LockStanding.NotLocked or LockStanding.BeforeFirstCollection =>
                $"L{locked} (as typed), before {(evidence.FirstCollection is { } first ? $"the first collection ({Time(first)})" : "any collection")}; {Level(evidence)}.{OfNumbers(last)}",
        };

        string OfNumbers(ProtocolLock rules) =>
            rules == evidence.Locks[^1]
                ? ""
                : $" Amended {Time(evidence.Locks[^1].At)}: criteria unchanged, planned numbers or labels differ.";
    }

    private static string Level(LockEvidence evidence) =>
        evidence.Level switch
        {
            LockLevel.ByApproverAndTimeStamp =>
                $"criteria {Approved(evidence)}, time-stamped by an authority (whom to trust, the reader decides)",
            LockLevel.ByApprover =>
                $"criteria {Approved(evidence)}, at a time that the signer states",
            LockLevel.ByTimeStamp =>
                "time-stamped by an authority (whom to trust, the reader decides)",
            LockLevel.BySignature => "signed, at a time that the signer states",
            LockLevel.NotLocked or LockLevel.ThisComputersClock or LockLevel.Contradicted =>
                "by this computer's clock only",
        };

    /// <summary>Who approved the criteria, and each amendment of them that was signed: "approved by signature of … on 2026-02-27, amended by signature of … on 2026-03-01 (3 changes)".</summary>
    private static string Approved(LockEvidence evidence) =>
        string.Join(
            ", ",
            evidence
                .Locks.Where(item => item.Approval is not null)
                .Select(
                    (item, i) =>
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{(i == 0 ? "approved" : "amended")} by signature of {item.Approval!.By} ({item.Approval.Role}) on {item.Approval.At:yyyy-MM-dd}{Changes(item)}"
                        )
                )
        );

    private static string Changes(ProtocolLock item) =>
        item.Differences is { } differences ? $" ({Counted.Of(differences.Length, "change")})" : "";
}
