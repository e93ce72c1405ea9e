namespace StabilityStudy.Core.Locking;

/// <summary>What the document of an amended protocol states beside the protocol: what it amends, why, when, and every change.</summary>
/// <param name="LockNumber">Number of the lock that the amended protocol gets; from 2.</param>
/// <param name="Date">Day on which the document was made.</param>
/// <param name="Reason">Why the protocol is amended.</param>
/// <param name="EarlierProtocolSha256">SHA-256 of the protocol of the lock before, lower-case hexadecimal.</param>
/// <param name="EarlierLockSha256">SHA-256 of the statement of that lock, lower-case hexadecimal.</param>
/// <param name="EarlierDocumentSha256">SHA-256 of the signed protocol document of that lock, lower-case hexadecimal; null where there was none.</param>
/// <param name="Changes">Every place at which the protocols differ.</param>
public sealed record ProtocolAmendment(
    int LockNumber,
    DateOnly Date,
    string Reason,
    string EarlierProtocolSha256,
    string EarlierLockSha256,
    string? EarlierDocumentSha256,
    ImmutableArray<ProtocolDifference> Changes
)
{
    /// <summary>1 for the first amendment.</summary>
    public int Number => LockNumber - 1;

    /// <summary>Number of the lock that it amends.</summary>
    public int EarlierLockNumber => LockNumber - 1;
}
