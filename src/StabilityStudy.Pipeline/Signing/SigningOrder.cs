using StabilityStudy.Files.Recording;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>One signature to be put on a report.</summary>
/// <param name="Role">Role of the signatory, as the protocol names it.</param>
/// <param name="At">When, with the offset of the place.</param>
/// <param name="Name">Printed name; null to print the name in the certificate.</param>
/// <param name="Credentials">Credentials to print after the name; null for none.</param>
/// <param name="Decision">What is decided; needed from the signatory who decides, and from nobody else.</param>
public sealed record SigningOrder(
    string Role,
    DateTimeOffset At,
    string? Name,
    string? Credentials,
    DecisionRequest? Decision
)
{
    /// <summary>Whether the signatory accepts what this version cannot compute again of a signed report of another version.</summary>
    public bool AcceptsNotRecomputed { get; init; }

    /// <summary>SHA-256 of the last line of the study's record; null where there is none.</summary>
    public string? RecordSha256 { get; init; }

    /// <summary>The decision that the record holds already; null without one.</summary>
    public RecordedDecision? Earlier { get; init; }
}
