using System.CommandLine;
using System.Diagnostics;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
using StabilityStudy.Files.Starting;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Plan;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Commands;

/// <summary>lock: freezes the protocol before data are collected.</summary>
internal static class LockCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var by = new Option<string>("--by")
        {
            Description = "Who locks the protocol: a name or a code of study.toml.",
            HelpName = "NAME",
            Required = true,
        };
        var reason = new Option<string?>("--reason")
        {
            Description =
                "Why a locked protocol is amended; needed from the second lock on, unless --signed-protocol states it.",
            HelpName = "TEXT",
        };
        var accepted = new Option<string?>("--accept-low-chance")
        {
            Description =
                "Why times are studied that will hardly be supported (see plan); it is recorded in the lock.",
            HelpName = "REASON",
        };
        var key = new Option<string?>("--key")
        {
            Description = "Signs the lock: PKCS#12 or PEM with key and certificate.",
            HelpName = "FILE",
        };
        var passphrase = new Option<string?>("--passphrase-file")
        {
            Description =
                $"File whose first line is the passphrase; else {KeyFile.Variable}, else you are asked.",
            HelpName = "FILE",
        };
        var timeStamp = new Option<string?>("--time-stamp")
        {
            Description = "Address of a time-stamp authority (RFC 3161).",
            HelpName = "URL",
        };
        var document = new Option<string?>("--signed-protocol")
        {
            Description =
                "The protocol document that author and approver have signed (plan --document, then sign); kept beside the lock, also when the protocol is locked already.",
            HelpName = "FILE",
        };
        var command = new Command(
            "lock",
            "Freeze the protocol before the first collection: protocol.lock holds its hash, who locked it and when; a copy goes to the folder locked.\n\nExample:\n  stability-study lock my-study --by LS1"
        )
        {
            study,
            by,
            reason,
            accepted,
            key,
            passphrase,
            timeStamp,
            document,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                new Request(
                    parsed.GetRequiredValue(study),
                    TextOption.OneLine(parsed.GetRequiredValue(by), "--by")!,
                    TextOption.OneLine(parsed.GetValue(reason), "--reason"),
                    TextOption.OneLine(parsed.GetValue(accepted), "--accept-low-chance"),
                    parsed.GetValue(key),
                    parsed.GetValue(passphrase),
                    parsed.GetValue(timeStamp),
                    parsed.GetValue(document)
                )
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, Request request)
    {
        var files = StudyFolder.Read(request.Folder);
        var source = request.TimeStamp is { } address ? TimeStampAuthority.At(address) : null;
        var signed = request.SignedProtocol is { } named
            ? SignedProtocol.Read(files, request.Folder, named)
            : null;
        if (signed?.Approved.LockNumber is { } locksIt)
        {
            signed.Write(terminal, request.Folder, request.By, locksIt);
            return ExitCode.Done;
        }

        using var key = request.Key is { } path
            ? KeyFile.Read(path, null, request.Passphrase, terminal)
            : null;
        switch (
            ProtocolLocking.Lock(
                files,
                request.By,
                terminal.Clock.GetLocalNow(),
                Reason(request.Reason, signed?.Approved.Reason),
                request.LowChanceAccepted,
                key,
                source
            )
        )
        {
            case LockAttempt.Locked locked:
                Write(terminal, request.Folder, request.By, files, signed is not null, locked);
                signed?.Write(terminal, request.Folder, request.By, locked.Lock.Number);
                return ExitCode.Done;
            case LockAttempt.Refused { Why: LockRefusal.AlreadyLocked }:
                throw new UsageException("This protocol is locked already; nothing was changed.");
            case LockAttempt.Refused { Why: LockRefusal.BeforeLastLock }:
                throw new UsageException(
                    "The clock of this computer is behind the time of the last lock in protocol.lock. Set the clock right, or find out whose clock was wrong; nothing was changed."
                );
            case LockAttempt.Refused:
                throw new UsageException(
                    "Another version of the protocol is locked. To amend it, give the reason with --reason; the locks so far stay on record."
                );
            case LockAttempt.LowChance low:
                foreach (
                    var line in PlanText
                        .Reservations(low.Plan)
                        .SelectMany(text =>
                            TextLines.WrapLine("Not locked. " + text, terminal.Width)
                        )
                )
                {
                    terminal.Error.WriteLine(line);
                }

                terminal.Error.WriteLine("Change protocol.toml, or accept by name:");
                terminal.Error.WriteLine(
                    $"  stability-study lock {NextCommand.Quoted(request.Folder)} --by {NextCommand.Quoted(request.By)} --accept-low-chance \"REASON\""
                );
                return ExitCode.StopQueries;
            case LockAttempt.NotProven failed:
                throw new UsageException("Not locked. " + failed.Why);
            case LockAttempt.Stopped stopped:
                QueryListing.Write(terminal, stopped.Queries);
                terminal.Error.WriteLine(
                    "Not locked: answer the queries marked STOP first. Nothing was written."
                );
                return ExitCode.StopQueries;
            default:
                throw new UnreachableException();
        }
    }

    /// <summary>The reason of an amendment: that of its signed document, so that whoever signed it approved this one.</summary>
    private static string? Reason(string? given, string? signed) =>
        given is not null && signed is not null && given != signed
            ? throw new UsageException(
                $"The signed document states another reason: \"{signed}\". Leave --reason away; nothing was locked."
            )
            : signed ?? given;

    private static void Write(
        Terminal terminal,
        string folder,
        string by,
        StudyBytes files,
        bool isApproved,
        LockAttempt.Locked locked
    )
    {
        var at = locked.Lock.At;
        var copy = LockFile.CopyName(locked.Lock.Number);
        RecordFile.Write(
            folder,
            new RecordEntry(
                RecordAction.Lock,
                at,
                by,
                ToolVersion.Named,
                [new FileHash(StudyBytes.ProtocolName, locked.Lock.ProtocolSha256)],
                [new FileHash(LockFile.Name, InputDigest.Sha256(locked.LockFile.Span))]
            ),
            (Path.Combine(folder, copy), locked.Copy),
            (Path.Combine(folder, LockFile.Name), locked.LockFile)
        );
        if (!locked.Queries.IsEmpty)
        {
            QueryListing.Write(terminal, locked.Queries);
            terminal.Out.WriteLine();
        }

        terminal.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Locked protocol {locked.Protocol.Code}, version {locked.Protocol.Version}, at {LockFile.Time(at)} by {by} (lock {locked.Lock.Number})."
            )
        );
        if (locked.Lock.Number > 1)
        {
            foreach (var line in ReportBuilder.AmendmentLines(locked.Lock))
            {
                terminal.Out.WriteLine(line);
            }
        }

        if (locked.Lock.LowChanceAccepted is { } accepted)
        {
            terminal.Out.WriteLine("Low chance accepted: " + accepted);
        }

        terminal.Out.WriteLine("sha256 " + locked.Lock.ProtocolSha256);
        SayMarked(terminal, files);
        if (files.HasRows)
        {
            terminal.Error.WriteLine(
                "The folder holds tables of data already: a lock after the first collection does not show that the criteria came first, and the report will say so."
            );
        }

        // The signatures on a protocol document say more than a clock, and what they say follows.
        if (locked.Lock.Level != LockLevel.ThisComputersClock || !isApproved)
        {
            terminal.Out.WriteLine(TimeProof(locked.Lock.Level));
        }
    }

    private static void SayMarked(Terminal terminal, StudyBytes files)
    {
        var marked = MarkedPlaces.Lines(files.Files[StudyBytes.ProtocolName].Span);
        if (!marked.IsEmpty)
        {
            foreach (
                var line in TextLines.WrapLine(
                    $"Still marked CHANGE, and locked as it stands: {StudyBytes.ProtocolName} line {LineRanges.Of(marked)}. If one of them is not yours yet, change it and lock again before the first collection.",
                    terminal.Width
                )
            )
            {
                terminal.Error.WriteLine(line);
            }
        }
    }

    private static string TimeProof(LockLevel level) =>
        level switch
        {
            LockLevel.ByTimeStamp => "The time is stamped by the authority.",
            LockLevel.BySignature =>
                "The lock is signed; its time is this computer's clock, as the signer states it.",
            LockLevel.NotLocked
            or LockLevel.ThisComputersClock
            or LockLevel.Contradicted
            or LockLevel.ByApprover
            or LockLevel.ByApproverAndTimeStamp =>
                "The time is this computer's clock only, which proves little: print or send the hash today to somebody who keeps it.",
        };

    private sealed record Request(
        string Folder,
        string By,
        string? Reason,
        string? LowChanceAccepted,
        string? Key,
        string? Passphrase,
        string? TimeStamp,
        string? SignedProtocol
    );
}
