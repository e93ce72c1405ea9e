using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Notices;

/// <summary>
/// Whether a study was ended without a conclusion: by the notice in its folder, or by its record where the notice is gone. Any doubt about the notice stops the study as
/// well. Whether the signer is to be trusted, verification asks; to end a study takes nothing away that is in force.
/// </summary>
internal static class EndedStudies
{
    /// <summary>The query that stops the study; null where nothing ended it.</summary>
    public static DataQuery? QueryOf(StudyBytes files)
    {
        if (!files.Files.TryGetValue(StudyBytes.EndingName, out var pdf))
        {
            return
                RecordedEnding.Newest(files.Files.GetValueOrDefault(StudyRecord.Name)) is { } gone
                ? Query(
                    EndingQueries.NoticeMissing,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"By the record of the study {gone.By} signed the notice that ended it on {gone.At:yyyy-MM-dd}, and it is not in the folder."
                    )
                )
                : null;
        }

        var found = ReportVerifier.Verify(pdf, VerificationOptions.WithoutTrust);
        return found switch
        {
            { Notice.Study: { } study } when !IsOf(study, files) => Query(
                EndingQueries.NoticeNotRight,
                $"The notice ends study {study.Code} with another protocol than those that were locked here."
            ),
            { Outcome: PartOutcome.Fails } => Query(
                EndingQueries.NoticeNotRight,
                found.Parts.First(part => part.Outcome == PartOutcome.Fails).Sentences[0]
            ),
            { Notice: { Study: not null } notice, LacksSignatures: true } => Query(
                EndingQueries.NoticeNotSigned,
                $"{notice.By} has not signed the notice that ends this study."
            ),
            { Notice: { Study: not null } notice } => Query(
                EndingQueries.StudyEnded,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"This study was ended without a conclusion by {notice.By}, signed {found.FirstSignedAt:yyyy-MM-dd}: {notice.Reason}"
                )
            ),
            _ => Query(EndingQueries.NoticeNotRight, "The file is no notice that ends a study."),
        };
    }

    private static bool IsOf(EndedStudy study, StudyBytes files) =>
        files.Files.TryGetValue(LockFile.Name, out var bytes)
        && LockFile.Read(bytes).TryGet(out var locks)
        && locks.All.Any(item => item.Lock.ProtocolSha256 == study.ProtocolSha256);

    private static DataQuery Query(QueryKind kind, string text) =>
        new(kind, new QuerySource(StudyBytes.EndingName, null, null), "", text);
}
