using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>The certificates somebody has decided to trust. Only those that issued themselves end a chain; others help to build one.</summary>
public sealed class TrustAnchors
{
    private TrustAnchors(ImmutableArray<X509Certificate2> certificates) =>
        Certificates = certificates;

    /// <summary>How many certificates there are.</summary>
    public int Count => Certificates.Length;

    /// <summary>What they say.</summary>
    public ImmutableArray<CertificateFacts> Facts => [.. Certificates.Select(CertificateFacts.Of)];

    internal ImmutableArray<X509Certificate2> Certificates { get; }

    /// <summary>The certificates of the files; none makes anchors to which no chain leads.</summary>
    public static TrustAnchors Of(IEnumerable<TrustFile> files) =>
        new([.. files.SelectMany(static file => file.Certificates)]);

    /// <summary>Whether a chain may end with the certificate.</summary>
    internal bool Hold(X509Certificate2 certificate) =>
        CertificateFacts.IsOwnIssuer(certificate) && Certificates.Contains(certificate);
}
