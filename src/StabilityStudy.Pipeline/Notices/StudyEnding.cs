using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Notices;

/// <summary>Makes the notice that ends a study without a conclusion.</summary>
public static class StudyEnding
{
    /// <summary>Makes the notice.</summary>
    /// <param name="files">The files of the study folder; of the data only how many specimens there are is read.</param>
    /// <param name="by">Printed name of the person who decides and signs.</param>
    /// <param name="reason">Why.</param>
    /// <param name="paper">Paper size.</param>
    public static NoticeAttempt Of(StudyBytes files, string by, string reason, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (
            !files.Files.TryGetValue(LockFile.Name, out var lockBytes)
            || !LockFile.Read(lockBytes).TryGet(out var locks)
            || locks.All.IsEmpty
        )
        {
            return new NoticeAttempt.Refused(
                $"There is no {LockFile.Name} that can be read. A study whose protocol was never locked has not begun, and nothing is to be ended."
            );
        }

        var newest = locks.All[^1].Lock;
        if (LockedProtocols.Read(newest, files.Files) is not { } protocol)
        {
            return new NoticeAttempt.Refused(
                $"The protocol of lock {newest.Number.ToString(CultureInfo.InvariantCulture)} is not at hand as it was locked. Put {LockFile.CopyName(newest.Number)} back."
            );
        }

        var record = files.Files.GetValueOrDefault(StudyRecord.Name);
        if (RecordedDecision.Newest(record) is { } decided)
        {
            return new NoticeAttempt.Refused(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A decision on this study was signed on {decided.At:yyyy-MM-dd} by {decided.By}: {decided.Words}. Take its windows back with withdraw."
                )
            );
        }

        var inputs = StudyIntake.ReadSound(files);
        var looks = LookRecord.All(record, inputs?.Looks ?? []);
        var notice = new Notice(
            NoticeKind.StudyEnded,
            by,
            protocol.Signatories.Last(protocol.Decides).Role,
            reason
        )
        {
            Study = new EndedStudy(
                protocol.Code,
                protocol.Version,
                newest.ProtocolSha256,
                newest.Number,
                newest.At,
                StudyRecord.LineOfLock(record, newest.Number),
                protocol.Groups.Sum(group => group.Specimens)
                    * Math.Max(1, protocol.Instruments.Length)
            )
            {
                Collected = inputs?.Tubes.Select(tube => tube.Specimen).Distinct().Count(),
                Tested = inputs?.Results.Select(result => result.Specimen).Distinct().Count(),
                Looks = looks.Length,
                LastLook = looks.IsEmpty
                    ? null
                    : DateOnly.FromDateTime(looks.Max(look => look.At).DateTime),
            },
        };
        return NoticeDocumentFile.Drawn(notice, paper);
    }
}
