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
        var report = new Argument<string>("REPORT")
        {
            Description =
                "The report, protocol document or notice, signed or not; with --complete the file prepared.pdf.",
        };
        var role = new Option<string?>("--role")
        {
            Description = "Role in which you sign, as the protocol names it.",
            HelpName = "ROLE",
        };
        var key = new Option<string?>("--key")
        {
            Description = "Your signing key: PKCS#12 (.p12, .pfx) or PEM.",
            HelpName = "FILE",
        };
        var certificate = new Option<string?>("--certificate")
        {
            Description =
                "Your certificate (PEM), when the key file does not hold it; with --prepare always.",
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
        var prepare = new Option<string?>("--prepare")
        {
            Description =
                "For a key on a card or token: sign nothing, and write into this folder what another program is to sign.",
            HelpName = "FOLDER",
        };
        var complete = new Option<string?>("--complete")
        {
            Description =
                "The answer of that program (CMS signature, DER or PEM), to be put into what was prepared.",
            HelpName = "FILE",
        };
        var output = new Option<string?>("--output", "-o")
        {
            Description =
                "Where the signed copy of an unsigned report goes; signed/CODE-DIGEST.pdf otherwise.",
            HelpName = "FILE",
        };
        var command = new Command(
            "sign",
            "Put your signature on a report. An unsigned report is copied to signed/CODE-DIGEST.pdf in the study folder; a signed one, and any notice, is extended in place.\n\nExample:\n  stability-study sign my-study/out/report.pdf --role author --key me.p12\n\nWith a key on a card or token:\n  stability-study sign my-study/out/report.pdf --role author \\\n      --certificate me.pem --prepare to-sign\n  stability-study sign to-sign/prepared.pdf --complete to-sign/answer.p7s"
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
            prepare,
            complete,
            output,
        };
        foreach (var option in decision.All)
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
            (int)(
                parsed.GetValue(complete) is { } answer ? Complete(parsed, answer)
                : parsed.GetValue(prepare) is { } folder ? Prepare(parsed, folder)
                : Sign(parsed)
            )
        );
        return command;

        ExitCode Sign(ParseResult parsed) =>
            SigningRun.Sign(
                terminal,
                Request(parsed),
                new SigningWithKey(
                    parsed.GetValue(key)
                        ?? throw new UsageException(
                            "Give your signing key with --key; for a key on a card or token prepare the signature with --prepare."
                        ),
                    parsed.GetValue(passphrase),
                    parsed.GetValue(timeStamp),
                    parsed.GetValue(output)
                )
            );

        ExitCode Prepare(ParseResult parsed, string folder)
        {
            Refuse(
                parsed,
                [key, passphrase, timeStamp, output],
                "does not go with --prepare, which signs nothing. --time-stamp and --output go with --complete."
            );
            return SigningRun.Prepare(terminal, Request(parsed), folder);
        }

        ExitCode Complete(ParseResult parsed, string answer)
        {
            Refuse(
                parsed,
                command.Options.Except([complete, timeStamp, output]),
                "does not go with --complete: all but the signature was settled when it was prepared."
            );
            return SigningRun.Complete(
                terminal,
                new CompletionRequest(
                    parsed.GetRequiredValue(report),
                    answer,
                    parsed.GetValue(timeStamp),
                    parsed.GetValue(output)
                )
            );
        }

        SigningRequest Request(ParseResult parsed) =>
            new(
                parsed.GetRequiredValue(report),
                parsed.GetValue(role)
                    ?? throw new UsageException(
                        "Say with --role in which role you sign, as the protocol names it."
                    ),
                parsed.GetValue(certificate),
                TextOption.OneLine(parsed.GetValue(name), "--name"),
                TextOption.OneLine(parsed.GetValue(credentials), "--credentials"),
                decision.Read(parsed),
                parsed.GetValue(accept)
            );
    }

    private static void Refuse(ParseResult parsed, IEnumerable<Option> options, string why)
    {
        if (
            options.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false }) is
            { } given
        )
        {
            throw new UsageException($"{given.Name} {why}");
        }
    }
}
