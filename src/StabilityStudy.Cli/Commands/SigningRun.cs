using System.Diagnostics;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>Signs a report, or prepares or completes a signature; writes it with its entry in the study's record, and says what was done.</summary>
internal static class SigningRun
{
    public static ExitCode Sign(Terminal terminal, SigningRequest request, SigningWithKey with)
    {
        var report = ReportFile.Read(request.Report);
        var source = SourceAt(with.TimeStamp);
        using var key = KeyFile.Read(with.Key, request.Certificate, with.Passphrase, terminal);
        var at = Start(terminal);
        return Finish(
            terminal,
            new Target(request.Report, with.Output, report, at, key.Certificate.IsSelfIssued),
            ReportSigning.Sign(report, key, Order(request, at), source)
        );
    }

    public static ExitCode Prepare(Terminal terminal, SigningRequest request, string path)
    {
        var report = ReportFile.Read(request.Report);
        var certificate = PreparedFolder.ReadCertificate(
            request.Certificate
                ?? throw new UsageException(
                    "Give your certificate with --certificate: the stamp names it, and only its key can sign what is prepared."
                )
        );
        var at = Start(terminal);
        switch (ReportSigning.Prepare(report, certificate.Facts, Order(request, at)))
        {
            case SigningAttempt.Prepared prepared:
                var folder = new PreparedFolder(path);
                folder.Write(request.Report, certificate, prepared.Document);
                PreparedWords.Say(terminal, folder, prepared.Afterwards);
                return ExitCode.Done;
            case SigningAttempt.Refused refused:
                throw new UsageException("Not prepared. " + refused.Why);
            default:
                throw new UnreachableException();
        }
    }

    public static ExitCode Complete(Terminal terminal, CompletionRequest request)
    {
        var prepared = ReportFile.Read(request.Prepared);
        var folder = PreparedFolder.Of(request.Prepared);
        var path = folder.ReadReportPath();
        var report = ReportFile.Read(path);
        var certificate = folder.ReadCertificate().Facts;
        var answer = KeyFile.Bytes(request.Answer);
        var source = SourceAt(request.TimeStamp);
        var at = Start(terminal);
        return Finish(
            terminal,
            new Target(path, request.Output, report, at, certificate.IsSelfIssued),
            ReportCompletion.Complete(
                new CompletionOrder(report, prepared, certificate, answer, at, source)
                {
                    Earlier = RecordedDecision.Newest(
                        RecordFile.Read(ReportFile.StudyFolder(path))
                    ),
                }
            )
        );
    }

    private static TimeStampSource? SourceAt(string? address) =>
        address is null ? null : TimeStampAuthority.At(address);

    private static DateTimeOffset Start(Terminal terminal)
    {
        terminal.Progress("Computing the report again before it is signed");
        return terminal.Clock.GetLocalNow();
    }

    private static SigningOrder Order(SigningRequest request, DateTimeOffset at)
    {
        var record = RecordFile.Read(ReportFile.StudyFolder(request.Report));
        return new(request.Role, at, request.Name, request.Credentials, request.Decision)
        {
            AcceptsNotRecomputed = request.AcceptsNotRecomputed,
            RecordSha256 = StudyRecord.NewestSha256(record),
            Earlier = RecordedDecision.Newest(record),
        };
    }

    private static ExitCode Finish(Terminal terminal, Target target, SigningAttempt attempt)
    {
        switch (attempt)
        {
            case SigningAttempt.Refused refused:
                throw new UsageException("Not signed. " + refused.Why);
            case SigningAttempt.Done done:
                var path = PathOf(target, done);
                Write(target, done, path);
                Say(terminal, done, target.IsSelfIssued);
                foreach (var remark in done.Remarks)
                {
                    terminal.Error.WriteLine(remark);
                }

                terminal.Out.WriteLine(path);
                SayIfChanged(terminal, target.Report, done);
                SayWhatFollows(terminal, target.Report, path, done);
                return ExitCode.Done;
            default:
                throw new UnreachableException();
        }
    }

    /// <summary>A signed report grows in place; a copy of an unsigned one never replaces a file.</summary>
    private static string PathOf(Target target, SigningAttempt.Done done)
    {
        if (done.SignedBefore || done.Document == DocumentKind.Notice)
        {
            return
                target.Output is null
                || Path.GetFullPath(target.Output) == Path.GetFullPath(target.Report)
                ? target.Report
                : throw new UsageException(
                    "A signed report, and any notice, is extended in place: leave --output away, so that there are never two versions."
                );
        }

        var path =
            target.Output
            ?? ReportFile.SignedCopy(
                target.Report,
                done.Document == DocumentKind.Protocol
                    ? done.StudyCode + "-protocol"
                    : done.StudyCode,
                done.InputDigest
            );
        return File.Exists(path)
            ? throw new UsageException(
                $"{path} exists already and is never overwritten. To add a signature, sign that file."
            )
            : path;
    }

    private static void Write(Target target, SigningAttempt.Done done, string path) =>
        RecordFile.Write(
            ReportFile.StudyFolder(target.Report),
            new RecordEntry(
                RecordAction.Sign,
                target.At,
                done.By,
                ToolVersion.Named,
                [
                    new FileHash(
                        Path.GetFileName(target.Report),
                        InputDigest.Sha256(target.Before.Span)
                    ),
                ],
                [new FileHash(Path.GetFileName(path), InputDigest.Sha256(done.Report.Span))]
            )
            {
                Decision = done.Decision ?? "",
            },
            (path, done.Report)
        );

    private static void Say(Terminal terminal, SigningAttempt.Done done, bool isSelfIssued)
    {
        terminal.Out.WriteLine(
            $"Signed as {done.Role}."
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
    private static void SayIfChanged(Terminal terminal, string report, SigningAttempt.Done done)
    {
        if (
            done.Document != DocumentKind.Notice
            && ReportFile.StudyFolder(report) is { } folder
            && DigestOf(folder, done.Document == DocumentKind.Protocol) != done.InputDigest
        )
        {
            terminal.Error.WriteLine(
                done.Document == DocumentKind.Protocol
                    ? "The protocol.toml of the study folder is not the one in this document, or cannot be read: the signature is for the one in the document. If the change belongs to it, make and sign a new document."
                    : "The files of the study folder have changed since this report was made, or cannot be read: the signature is for the data in the report. If the change belongs to it, make and sign a new report."
            );
        }
    }

    /// <summary>A protocol document that everybody has signed is still to be locked, and a notice counts where the reports are.</summary>
    private static void SayWhatFollows(
        Terminal terminal,
        string report,
        string path,
        SigningAttempt.Done done
    )
    {
        if (done.Document == DocumentKind.Notice)
        {
            terminal.Error.WriteLine(
                "Keep the notice, or a copy of it, in the folder of your signed reports: supported-windows applies it from there."
            );
        }

        if (done.Document == DocumentKind.Protocol && done.StillMissing.IsEmpty)
        {
            NextCommand.Say(
                terminal,
                "lock",
                ReportFile.StudyFolder(report) ?? "STUDY",
                "--by",
                "NAME",
                "--signed-protocol",
                path
            );
        }
    }

    /// <summary>Null where the folder cannot be read: the signature is written by then, so that is no error.</summary>
    private static string? DigestOf(string folder, bool ofProtocol)
    {
        try
        {
            var files = StudyFolder.Read(folder);
            return ofProtocol
                ? InputDigest.Sha256(files.Files[StudyBytes.ProtocolName].Span)
                : StudyPipeline.InputDigestOf(files);
        }
        catch (UsageException)
        {
            return null;
        }
    }

    /// <summary>A report that is being signed.</summary>
    /// <param name="Report">The report.</param>
    /// <param name="Output">Where the signed file goes; null for the usual place.</param>
    /// <param name="Before">The report before.</param>
    /// <param name="At">When.</param>
    /// <param name="IsSelfIssued">Whether nobody vouches for the name in the certificate.</param>
    private sealed record Target(
        string Report,
        string? Output,
        ReadOnlyMemory<byte> Before,
        DateTimeOffset At,
        bool IsSelfIssued
    );
}
