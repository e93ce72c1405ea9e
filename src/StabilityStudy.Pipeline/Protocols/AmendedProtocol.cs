using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Attachments;

namespace StabilityStudy.Pipeline.Protocols;

/// <summary>What the document of an amendment carries beside the amended protocol.</summary>
/// <param name="Amendment">What it states, held against both protocols.</param>
/// <param name="Earlier">The protocol of the lock that it amends, byte for byte.</param>
internal sealed record AmendedProtocol(ProtocolAmendment Amendment, ReadOnlyMemory<byte> Earlier)
{
    /// <summary>Reads it out of a protocol document; null where the document carries the protocol alone.</summary>
    /// <param name="first">The document before anybody signed.</param>
    /// <param name="amends">What it amends.</param>
    /// <param name="fault">Why it does not hold, in words.</param>
    public static bool TryRead(
        FirstRevision first,
        out AmendedProtocol? amends,
        [NotNullWhen(false)] out string? fault
    )
    {
        amends = null;
        fault = null;
        if (first.Files.Count == 1)
        {
            return true;
        }

        var earlier = first
            .Files.Where(file => file.Key is not (StudyBytes.ProtocolName or AmendmentFile.Name))
            .ToArray();
        if (
            !first.Files.TryGetValue(AmendmentFile.Name, out var stated)
            || earlier is not [var (name, bytes)]
        )
        {
            fault =
                $"The file carries other files beside {StudyBytes.ProtocolName}, and they are not those of an amendment.";
            return false;
        }

        if (
            !AmendmentFile.TryRead(
                stated,
                bytes,
                first.Files[StudyBytes.ProtocolName],
                out var amendment,
                out fault
            )
        )
        {
            return false;
        }

        if (name != LockedProtocols.StoredName(amendment.EarlierLockNumber))
        {
            fault = $"The file carries {name}, which is not the protocol that it amends.";
            return false;
        }

        amends = new AmendedProtocol(amendment, bytes);
        return true;
    }

    /// <summary>The files that the document carries beside the amended protocol.</summary>
    public ImmutableArray<Attachment> Attachments =>
        [
            new(
                AmendmentFile.Name,
                "application/toml",
                "What the amendment states",
                AttachmentRelationship.Data,
                AmendmentFile.Write(Amendment)
            ),
            new(
                LockedProtocols.StoredName(Amendment.EarlierLockNumber),
                "application/toml",
                "The protocol that is amended",
                AttachmentRelationship.Source,
                Earlier
            ),
        ];
}
