using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline.Inspection;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Commands;

/// <summary>verify: checks a report and trusts nothing in it.</summary>
internal static class VerifyCommand
{
    public static Command Create(Terminal terminal)
    {
        var report = new Argument<string>("REPORT")
        {
            Description =
                "The report, protocol document or notice, or a folder that inspection has written.",
        };
        var trust = new TrustOptions();
        var record = new Option<string>("--record")
        {
            Description =
                "The record of the study, record.jsonl, in which no line may be missing that was there when the report was signed. Without it: the one of the study folder in whose folder out or signed the report lies.",
            HelpName = "FILE",
        };
        var json = StudyArgument.Json("Write what was found as JSON.");
        var command = new Command(
            "verify",
            "Check the signatures, whether anything was done besides signing, whether every figure follows from the data in the file, and whether the criteria came before the data. Of a folder that inspection has written: whether every file is the one of its list, none is missing or was added, and all of it follows from the signed files in it.\n\nExample:\n  stability-study verify report.pdf --trust our-certificates.pem"
        )
        {
            report,
            trust.Trust,
            trust.TrustTime,
            trust.Revoked,
            record,
            json,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(report),
                trust.Of(parsed).Read(terminal.Clock.GetUtcNow()),
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
        if (InspectionFolder.Is(path))
        {
            return record is null
                ? Exit(RunFolder(terminal, path, options, json))
                : throw new UsageException("--record does not go with a folder.");
        }

        var report = ReportFile.Read(path);
        var recorded = record is null ? RecordFile.Above(path) : RecordFile.ReadAt(record);
        terminal.Progress("Computing the report again");
        var found = ReportVerifier.Verify(report, options, recorded);
        if (json)
        {
            VerificationJson.Write(terminal, found);
        }
        else
        {
            Write(terminal, VerificationText.Lines(found, terminal.Width));
        }

        return Exit(found.Outcome);
    }

    private static PartOutcome RunFolder(
        Terminal terminal,
        string path,
        VerificationOptions options,
        bool json
    )
    {
        var (files, sources) = InspectionFolder.Read(path);
        var found = InspectionCheck.Of(files, sources, options, terminal.Progress);
        if (json)
        {
            VerificationJson.Write(terminal, found);
        }
        else
        {
            Write(terminal, VerificationText.Lines(found, terminal.Width));
        }

        return found.Outcome;
    }

    private static void Write(Terminal terminal, ImmutableArray<string> lines)
    {
        foreach (var line in lines)
        {
            terminal.Out.WriteLine(line);
        }
    }

    private static ExitCode Exit(PartOutcome outcome) =>
        outcome switch
        {
            PartOutcome.Holds => ExitCode.Done,
            PartOutcome.NotChecked => ExitCode.VerificationIncomplete,
            PartOutcome.Fails => ExitCode.VerificationFailed,
        };
}
