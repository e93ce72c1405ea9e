using System.Diagnostics;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Notices;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Commands;

/// <summary>Writes notices to be signed, each with its line in the record of its study where there is one.</summary>
internal static class NoticeRun
{
    /// <summary>Makes a notice about reports.</summary>
    public static ExitCode About(
        Terminal terminal,
        string[] reports,
        NoticeRequest request,
        string? output
    )
    {
        terminal.Progress("Computing the reports again");
        var at = terminal.Clock.GetLocalNow();
        var attempt = NoticeMaking.Of(
            [.. reports.Select(path => new SignedReportFile(path, ReportFile.Read(path)))],
            request,
            VerificationOptions.WithoutTrust with
            {
                Now = at,
            }
        );
        return Write(
            terminal,
            attempt,
            at,
            notice =>
                (
                    ReportFile.StudyFolder(reports[0]),
                    output ?? Beside(reports[0], notice, at),
                    [
                        .. notice.Reports.Select(report => new FileHash(
                            report.Name,
                            report.FileSha256
                        )),
                    ]
                )
        );
    }

    /// <summary>Writes a notice that was made, never over another file.</summary>
    public static ExitCode Write(
        Terminal terminal,
        NoticeAttempt attempt,
        DateTimeOffset at,
        Func<Notice, (string? Study, string Path, ImmutableArray<FileHash> Inputs)> place
    )
    {
        switch (attempt)
        {
            case NoticeAttempt.Refused refused:
                throw new UsageException("No notice was made. " + refused.Why);
            case NoticeAttempt.Drawn drawn:
                var (study, path, inputs) = place(drawn.Notice);
                if (File.Exists(path))
                {
                    throw new UsageException($"{path} exists already and is never overwritten.");
                }

                RecordFile.Write(
                    study,
                    new RecordEntry(
                        RecordAction.Notice,
                        at,
                        drawn.Notice.By,
                        ToolVersion.Named,
                        inputs,
                        [new FileHash(Path.GetFileName(path), InputDigest.Sha256(drawn.Pdf.Span))]
                    ),
                    (path, drawn.Pdf)
                );
                terminal.Out.WriteLine(path);
                terminal.Out.WriteLine("It counts once it is signed.");
                NextCommand.Say(
                    terminal,
                    "sign",
                    path,
                    "--role",
                    drawn.Notice.Role,
                    "--key",
                    "KEY"
                );
                return ExitCode.Done;
            default:
                throw new UnreachableException();
        }
    }

    private static string Beside(string report, Notice notice, DateTimeOffset at)
    {
        var word = notice.Kind switch
        {
            NoticeKind.Withdrawn => "withdrawn",
            NoticeKind.EndedByNewDirector => "ended",
            NoticeKind.Reviewed => "reviewed",
            NoticeKind.Adopted => "adopted",
            NoticeKind.StudyEnded => throw new UnreachableException(),
        };
        var day = notice.From ?? notice.Review ?? DateOnly.FromDateTime(at.DateTime);
        return Path.Combine(
            Path.GetDirectoryName(report) ?? "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Path.GetFileNameWithoutExtension(report)}-{word}-{day:yyyy-MM-dd}.pdf"
            )
        );
    }
}
