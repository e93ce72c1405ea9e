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

/// <summary>renew: keeps the signatures of a report provable after their certificates have ended.</summary>
internal static class RenewCommand
{
    public static Command Create(Terminal terminal)
    {
        var report = new Argument<string>("REPORT") { Description = "The signed report." };
        var trust = new TrustOptions();
        var timeStamp = new Option<string>("--time-stamp")
        {
            Description =
                "Address of a time-stamp authority (RFC 3161), which dates everything in the file.",
            HelpName = "URL",
        };
        var command = new Command(
            "renew",
            "Keep in a signed report what is needed to judge its signatures when their certificates have ended: the certificates, the lists of revoked ones, and an archive time stamp over all of it. Renew while every certificate is still valid; the file grows in place.\n\nExample:\n  stability-study renew signed.pdf --trust our-certificates.pem --revoked our-list.crl"
        )
        {
            report,
            trust.Trust,
            trust.TrustTime,
            trust.Revoked,
            timeStamp,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(report),
                trust.Of(parsed),
                parsed.GetValue(timeStamp)
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, string path, TrustInput trust, string? address)
    {
        var report = ReportFile.Read(path);
        var at = terminal.Clock.GetLocalNow();
        var source = address is null ? null : TimeStampAuthority.At(address);
        terminal.Progress("Computing the report again before it is renewed");
        switch (ReportRenewal.Renew(report, trust.Read(at), source))
        {
            case RenewalAttempt.Refused refused:
                throw new UsageException("Not renewed. " + refused.Why);
            case RenewalAttempt.Done done:
                var name = Path.GetFileName(path);
                RecordFile.Write(
                    ReportFile.StudyFolder(path),
                    new RecordEntry(
                        RecordAction.Renew,
                        at,
                        Environment.UserName,
                        ToolVersion.Named,
                        [new FileHash(name, InputDigest.Sha256(report.Span))],
                        [new FileHash(name, InputDigest.Sha256(done.Report.Span))]
                    ),
                    (path, done.Report)
                );
                foreach (var sentence in done.Added)
                {
                    terminal.Out.WriteLine(sentence);
                }

                terminal.Out.WriteLine(path);
                return ExitCode.Done;
            default:
                throw new UnreachableException();
        }
    }
}
