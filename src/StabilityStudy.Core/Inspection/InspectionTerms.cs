namespace StabilityStudy.Core.Inspection;

/// <summary>A certificate that whoever made an inspection folder trusted.</summary>
/// <param name="Name">Whose it is.</param>
/// <param name="Sha256">SHA-256 of it, lower-case hexadecimal.</param>
public sealed record TrustedCertificate(string Name, string Sha256);

/// <summary>How an inspection folder was made. With these and the signed files in it, all else in it can be made again.</summary>
/// <param name="AsOf">The day as of which the register is shown.</param>
/// <param name="MadeAt">When the files were verified, by the clock of that computer.</param>
/// <param name="ToolVersion">Version of the program.</param>
/// <param name="KeepYears">Years for which records are kept after the last use.</param>
public sealed record InspectionTerms(
    DateOnly AsOf,
    DateTimeOffset MadeAt,
    string ToolVersion,
    int KeepYears
)
{
    /// <summary>Whether the documents are drawn for Letter, in place of A4.</summary>
    public bool IsOnLetter { get; init; }

    /// <summary>Time from the spin to the test at the bench; null for what the protocols say.</summary>
    public TimeSpan? SpinTakes { get; init; }

    /// <summary>Who was trusted to vouch for signers.</summary>
    public ImmutableArray<TrustedCertificate> Trusted { get; init; } = [];

    /// <summary>Who was trusted to vouch for time-stamp authorities.</summary>
    public ImmutableArray<TrustedCertificate> TrustedForTime { get; init; } = [];
}
