using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What an issuer says about revoked certificates: a list of them, or the answer about a single one.</summary>
public abstract class RevocationStatement
{
    private protected RevocationStatement() { }

    /// <summary>Who made it, as it says (RFC 4514 text).</summary>
    public required string Issuer { get; init; }

    /// <summary>When what it says was known to be right.</summary>
    public required DateTimeOffset ThisUpdate { get; init; }

    /// <summary>When the next one is due; null when it does not say.</summary>
    public required DateTimeOffset? NextUpdate { get; init; }

    /// <summary>The whole file in DER.</summary>
    internal ReadOnlyMemory<byte> Encoded { get; init; }

    /// <summary>When the certificate was revoked; null when it was not, or nothing is said about it.</summary>
    internal abstract DateTimeOffset? RevocationOf(X509Certificate2 certificate);

    /// <summary>Why it is none that the issuer has made and signed about the certificate; null when it is.</summary>
    internal abstract RevocationListProblem? ProblemAgainst(
        X509Certificate2 certificate,
        X509Certificate2 issuer
    );

    /// <summary>A serial number without the zeros before it, which one side may write and the other not.</summary>
    internal static string Key(string serialNumber) => serialNumber.TrimStart('0');
}
