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
        var decision = new DecisionOptions();
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
            timeStamp,
            accept,
            output,
        };
        foreach (var option in decision.All)
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
            (int)
                SigningRun.Run(
                    terminal,
                    new SigningRequest(
                        parsed.GetRequiredValue(report),
                        parsed.GetRequiredValue(role),
                        parsed.GetRequiredValue(key),
                        parsed.GetValue(certificate),
                        parsed.GetValue(passphrase),
                        TextOption.OneLine(parsed.GetValue(name), "--name"),
                        TextOption.OneLine(parsed.GetValue(credentials), "--credentials"),
                        decision.Read(parsed),
                        parsed.GetValue(timeStamp),
                        parsed.GetValue(accept),
                        parsed.GetValue(output)
                    )
                )
        );
        return command;
    }
}
