using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
using StabilityStudy.Files.Words;
using StabilityStudy.Pipeline;

namespace StabilityStudy.Cli.Folders;

/// <summary>A signed protocol document that goes beside the lock of its protocol.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="Bytes">Its content.</param>
/// <param name="Approved">What it shows.</param>
internal sealed record SignedProtocol(
    string Name,
    ReadOnlyMemory<byte> Bytes,
    ApprovalAttempt.Approved Approved
)
{
    /// <summary>Reads and judges the document.</summary>
    /// <exception cref="UsageException">It cannot be read, or does not approve the protocol of the study.</exception>
    public static SignedProtocol Read(StudyBytes files, string folder, string path)
    {
        var bytes = InputFile.ReadFilled(path, StudyLimits.DocumentBytes, "protocol document");
        var approved = ProtocolLocking.Approve(files, bytes) switch
        {
            ApprovalAttempt.Approved found => found,
            ApprovalAttempt.Refused refused => throw new UsageException(
                $"{path} does not approve the protocol of {folder}; nothing was locked. {refused.Why}"
            ),
            _ => throw new InvalidOperationException("A document approves or does not."),
        };
        return
            approved.LockNumber is { } number
            && File.Exists(Path.Combine(folder, LockFile.DocumentName(number)))
            ? throw new UsageException(
                $"{LockFile.DocumentName(number)} exists already; the signed document of a lock is never replaced."
            )
            : new SignedProtocol(Path.GetFileName(path), bytes, approved);
    }

    /// <summary>Writes the document beside a lock, with its line in the record.</summary>
    public void Write(Terminal terminal, string folder, string by, int number)
    {
        var name = LockFile.DocumentName(number);
        var hash = InputDigest.Sha256(Bytes.Span);
        RecordFile.Write(
            folder,
            new RecordEntry(
                RecordAction.Approve,
                terminal.Clock.GetLocalNow(),
                by,
                ToolVersion.Named,
                [new FileHash(Name, hash)],
                [new FileHash(name, hash)]
            ),
            (Path.Combine(folder, name), Bytes)
        );
        var approval = Approved.Approval;
        terminal.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"The criteria of lock {number} were approved by {approval.By} ({approval.Role}), signed {approval.At:yyyy-MM-dd HH:mm zzz}. The document is kept as {name}."
            )
        );
    }
}
