using System.Diagnostics;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>Signs a report, writes it with its entry in the study's record, and says what was done.</summary>
internal static class SigningRun
{
    public static ExitCode Run(Terminal terminal, SigningRequest request)
    {
        var report = ReportFile.Read(request.Report);
        var source = request.TimeStamp is { } address ? TimeStampAuthority.At(address) : null;
        using var key = KeyFile.Read(
            request.Key,
            request.Certificate,
            request.Passphrase,
            terminal
        );
        terminal.Progress("Computing the report again before it is signed");
        var at = terminal.Clock.GetLocalNow();
        var record = RecordFile.Read(ReportFile.StudyFolder(request.Report));
        var attempt = ReportSigning.Sign(
            report,
            new SigningOrder(
                request.Role,
                key,
                at,
                request.Name,
                request.Credentials,
                request.Decision,
                source
            )
            {
                AcceptsNotRecomputed = request.AcceptsNotRecomputed,
                RecordSha256 = StudyRecord.NewestSha256(record),
                Earlier = RecordedDecision.Newest(record),
            }
        );
        switch (attempt)
        {
            case SigningAttempt.Refused refused:
                throw new UsageException("Not signed. " + refused.Why);
            case SigningAttempt.Done done:
                var target = Target(request, done);
                Write(request, key.Certificate.Name, at, report, done, target);
                Say(terminal, request.Role, done, key.Certificate.IsSelfIssued);
                foreach (var remark in done.Remarks)
                {
                    terminal.Error.WriteLine(remark);
                }

                terminal.Out.WriteLine(target);
                SayIfChanged(terminal, request.Report, done.InputDigest);
                return ExitCode.Done;
            default:
                throw new UnreachableException();
        }
    }

    /// <summary>A signed report grows in place; a copy of an unsigned one never replaces a file.</summary>
    private static string Target(SigningRequest request, SigningAttempt.Done done)
    {
        if (done.SignedBefore)
        {
            return
                request.Output is null
                || Path.GetFullPath(request.Output) == Path.GetFullPath(request.Report)
                ? request.Report
                : throw new UsageException(
                    "A signed report is extended in place: leave --output away, so that there are never two versions."
                );
        }

        var target =
            request.Output
            ?? ReportFile.SignedCopy(request.Report, done.StudyCode, done.InputDigest);
        return File.Exists(target)
            ? throw new UsageException(
                $"{target} exists already and is never overwritten. To add a signature, sign that file."
            )
            : target;
    }

    private static void Write(
        SigningRequest request,
        string name,
        DateTimeOffset at,
        ReadOnlyMemory<byte> before,
        SigningAttempt.Done done,
        string target
    ) =>
        RecordFile.Write(
            ReportFile.StudyFolder(request.Report),
            new RecordEntry(
                RecordAction.Sign,
                at,
                request.Name is { } printed && printed != name
                    ? $"{printed} ({request.Role}; certificate of {name})"
                    : $"{name} ({request.Role})",
                ToolVersion.Named,
                [new FileHash(Path.GetFileName(request.Report), InputDigest.Sha256(before.Span))],
                [new FileHash(Path.GetFileName(target), InputDigest.Sha256(done.Report.Span))]
            )
            {
                Decision = done.Decision ?? "",
            },
            (target, done.Report)
        );

    private static void Say(
        Terminal terminal,
        string role,
        SigningAttempt.Done done,
        bool isSelfIssued
    )
    {
        terminal.Out.WriteLine(
            $"Signed as {role}."
                + (
                    done.StillMissing.IsEmpty
                        ? " Everybody has signed."
                        : $" Still to sign: {string.Join(", ", done.StillMissing)}."
                )
        );
        if (isSelfIssued)
        {
            terminal.Out.WriteLine(
                "The certificate is self-issued: nobody else vouches for the name in it."
            );
        }
    }

    /// <summary>The signature is for what stands in the report; that the study goes on beside it is for the signer to know.</summary>
    private static void SayIfChanged(Terminal terminal, string report, string inputDigest)
    {
        if (ReportFile.StudyFolder(report) is { } folder && DigestOf(folder) != inputDigest)
        {
            terminal.Error.WriteLine(
                "The files of the study folder have changed since this report was made, or cannot be read: the signature is for the data in the report. If the change belongs to it, make and sign a new report."
            );
        }
    }

    /// <summary>Null where the folder cannot be read: the signature is written by then, so that is no error.</summary>
    private static string? DigestOf(string folder)
    {
        try
        {
            return StudyPipeline.InputDigestOf(StudyFolder.Read(folder));
        }
        catch (UsageException)
        {
            return null;
        }
    }
}
