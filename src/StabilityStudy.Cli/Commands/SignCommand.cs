using System.CommandLine;
using System.Diagnostics;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>sign: puts the next signature on a report.</summary>
internal static class SignCommand
{
    private const string Approve = "approve";
    private const string Conditions = "conditions";
    private const string Decline = "decline";

    public static Command Create(Terminal terminal)
    {
        var report = new Argument<string>("REPORT") { Description = "The report, signed or not." };
        var role = new Option<string>("--role")
        {
            Description = "Role in which you sign, as the protocol names it.",
            HelpName = "ROLE",
            Required = true,
        };
        var key = new Option<string>("--key")
        {
            Description = "Your signing key: PKCS#12 (.p12, .pfx) or PEM.",
            HelpName = "FILE",
            Required = true,
        };
        var certificate = new Option<string?>("--certificate")
        {
            Description = "Your certificate (PEM), when the key file does not hold it.",
            HelpName = "FILE",
        };
        var passphrase = new Option<string?>("--passphrase-file")
        {
            Description =
                $"File whose first line is the passphrase; else {KeyFile.Variable}, else you are asked.",
            HelpName = "FILE",
        };
        var name = new Option<string?>("--name")
        {
            Description = "Printed name; the name in the certificate otherwise.",
            HelpName = "NAME",
        };
        var credentials = new Option<string?>("--credentials")
        {
            Description = "Credentials printed after the name.",
            HelpName = "TEXT",
        };
        var decision = new Option<string?>("--decision")
        {
            Description = "approve, conditions or decline; for the role that decides.",
            HelpName = "DECISION",
        }.AcceptOnlyFromAmong(Approve, Conditions, Decline);
        var text = new Option<string?>("--text")
        {
            Description = "The shorter window, the conditions or the reason for declining.",
            HelpName = "TEXT",
        };
        var timeStamp = new Option<string?>("--time-stamp")
        {
            Description = "Address of a time-stamp authority (RFC 3161).",
            HelpName = "URL",
        };
        var accept = new Option<bool>("--accept-not-recomputed")
        {
            Description =
                "Sign over the signatures on a report of an earlier version, accepting what this version cannot compute again.",
        };
        var output = new Option<string?>("--output", "-o")
        {
            Description =
                "Where the signed copy of an unsigned report goes; signed/CODE-DIGEST.pdf otherwise.",
            HelpName = "FILE",
        };
        var command = new Command(
            "sign",
            "Put your signature on a report. An unsigned report is copied to signed/CODE-DIGEST.pdf in the study folder; a signed one is extended in place.\n\nExample:\n  stability-study sign my-study/out/report.pdf --role author --key me.p12"
        )
        {
            report,
            role,
            key,
            certificate,
            passphrase,
            name,
            credentials,
            decision,
            text,
            timeStamp,
            accept,
            output,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                new Request(
                    parsed.GetRequiredValue(report),
                    parsed.GetRequiredValue(role),
                    parsed.GetRequiredValue(key),
                    parsed.GetValue(certificate),
                    parsed.GetValue(passphrase),
                    TextOption.OneLine(parsed.GetValue(name), "--name"),
                    TextOption.OneLine(parsed.GetValue(credentials), "--credentials"),
                    DecisionOf(
                        parsed.GetValue(decision),
                        TextOption.OneLine(parsed.GetValue(text), "--text")
                    ),
                    parsed.GetValue(timeStamp),
                    parsed.GetValue(accept),
                    parsed.GetValue(output)
                )
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, Request request)
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
    private static string Target(Request request, SigningAttempt.Done done)
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
        Request request,
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
            ),
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

    private static ApproverDecision? DecisionOf(string? decision, string? text) =>
        (decision, text) switch
        {
            (null, null) => null,
            (null, _) => throw new UsageException("--text goes with --decision."),
            (Approve, _) => new ApproverDecision(DecisionKind.Approve, text),
            (Conditions, _) => new ApproverDecision(DecisionKind.Conditions, text),
            _ => new ApproverDecision(DecisionKind.Decline, text),
        };

    private sealed record Request(
        string Report,
        string Role,
        string Key,
        string? Certificate,
        string? Passphrase,
        string? Name,
        string? Credentials,
        ApproverDecision? Decision,
        string? TimeStamp,
        bool AcceptsNotRecomputed,
        string? Output
    );
}
