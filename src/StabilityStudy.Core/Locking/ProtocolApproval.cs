namespace StabilityStudy.Core.Locking;

/// <summary>The signature of whoever decides on the protocol document: the limits and criteria approved, at best before any specimen was collected.</summary>
/// <param name="Role">Role of the signatory, as the protocol names it.</param>
/// <param name="By">Printed name.</param>
/// <param name="At">Time of signing as the signer states it.</param>
/// <param name="StampedAt">The time in a time stamp of that signature; null without one.</param>
public sealed record ProtocolApproval(
    string Role,
    string By,
    DateTimeOffset At,
    DateTimeOffset? StampedAt
)
{
    /// <summary>The latest time at which it may have been signed.</summary>
    public DateTimeOffset Latest => StampedAt > At ? StampedAt.Value : At;
}
