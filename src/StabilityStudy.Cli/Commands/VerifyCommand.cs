using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Commands;

/// <summary>verify: checks a report and trusts nothing in it.</summary>
internal static class VerifyCommand
{
    public static Command Create(Terminal terminal)
    {
        var report = new Argument<string>("REPORT") { Description = "The report." };
        var trust = new Option<string[]>("--trust")
        {
            Description =
                "Certificates that you trust to vouch for signers: a PEM or DER file, or a folder of them, in which lists of revoked certificates may lie too. May be given more than once.",
            HelpName = "FILE",
        };
        var trustTime = new Option<string[]>("--trust-time")
        {
            Description =
                "The same for time-stamp authorities: who vouches for signers does not vouch for the time.",
            HelpName = "FILE",
        };
        var revoked = new Option<string[]>("--revoked")
        {
            Description =
                "Lists of revoked certificates (CRL): a PEM or DER file, or a folder of them.",
            HelpName = "FILE",
        };
        var record = new Option<string>("--record")
        {
            Description =
                "The record of the study, record.jsonl, in which no line may be missing that was there when the report was signed. Without it: the one in the study folder of the report, where there is one.",
            HelpName = "FILE",
        };
        var json = StudyArgument.Json("Write what was found as JSON.");
        var command = new Command(
            "verify",
            "Check the signatures, whether anything was done besides signing, whether every figure follows from the data in the file, and whether the criteria came before the data.\n\nExample:\n  stability-study verify report.pdf --trust our-certificates.pem"
        )
        {
            report,
            trust,
            trustTime,
            revoked,
            record,
            json,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(report),
                new TrustInput(
                    parsed.GetValue(trust) ?? [],
                    parsed.GetValue(trustTime) ?? [],
                    parsed.GetValue(revoked) ?? []
                ).Read(terminal.Clock.GetUtcNow()),
                parsed.GetValue(record),
                parsed.GetValue(json)
            )
        );
        return command;
    }

    private static ExitCode Run(
        Terminal terminal,
        string path,
        VerificationOptions options,
        string? record,
        bool json
    )
    {
        var report = ReportFile.Read(path);
        var recorded = record is null ? RecordFile.Beside(path) : RecordFile.ReadAt(record);
        terminal.Progress("Computing the report again");
        var found = ReportVerifier.Verify(report, options, recorded);
        if (json)
        {
            VerificationJson.Write(terminal, found);
        }
        else
        {
            VerificationListing.Write(terminal, found);
        }

        return found.Outcome switch
        {
            PartOutcome.Holds => ExitCode.Done,
            PartOutcome.NotChecked => ExitCode.VerificationIncomplete,
            PartOutcome.Fails => ExitCode.VerificationFailed,
        };
    }
}
