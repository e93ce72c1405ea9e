using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Certificates;
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
                "Certificates that you trust: a PEM or DER file, or a folder of them. May be given more than once.",
            HelpName = "FILE",
        };
        var revoked = new Option<string[]>("--revoked")
        {
            Description = "Lists of revoked certificates (CRL), PEM or DER files.",
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
            revoked,
            json,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(report),
                new VerificationOptions(
                    Anchors(parsed.GetValue(trust) ?? []),
                    Lists(parsed.GetValue(revoked) ?? [])
                )
                {
                    Clock = terminal.Clock,
                },
                parsed.GetValue(json)
            )
        );
        return command;
    }

    private static ExitCode Run(
        Terminal terminal,
        string path,
        VerificationOptions options,
        bool json
    )
    {
        var report = ReportFile.Read(path);
        terminal.Progress("Computing the report again");
        var found = ReportVerifier.Verify(report, options);
        if (json)
        {
            VerificationJson.Write(terminal.Out, found);
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

    private static TrustAnchors? Anchors(string[] paths)
    {
        if (paths.Length == 0)
        {
            return null;
        }

        var files = paths.SelectMany(FilesAt).Select(KeyFile.Bytes).ToImmutableArray();
        return TrustAnchors.Read(files).TryGet(out var anchors, out var failure)
            ? anchors
            : throw new UsageException("--trust: " + failure.What);
    }

    private static ImmutableArray<RevocationList> Lists(string[] paths) =>
        [
            .. paths
                .SelectMany(FilesAt)
                .Select(path =>
                    RevocationList.Read(KeyFile.Bytes(path)).TryGet(out var list, out var failure)
                        ? list
                        : throw new UsageException($"{path}: {failure.What}")
                ),
        ];

    private static IEnumerable<string> FilesAt(string path) =>
        Directory.Exists(path)
            ? Directory
                .EnumerateFiles(path)
                .Where(file =>
                    Path.GetExtension(file).ToUpperInvariant()
                        is ".PEM"
                            or ".CRT"
                            or ".CER"
                            or ".DER"
                            or ".CRL"
                )
                .Order(StringComparer.Ordinal)
            : [path];
}
