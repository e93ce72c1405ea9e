using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A private key with its certificate. Held in memory only; dispose of it after signing.</summary>
public sealed class SigningKey : IDisposable
{
    internal SigningKey(
        X509Certificate2 holder,
        AsymmetricAlgorithm privateKey,
        ImmutableArray<X509Certificate2> others
    )
    {
        Holder = holder;
        PrivateKey = privateKey;
        Others = others;
        Certificate = CertificateFacts.Of(holder);
    }

    /// <summary>The certificate that belongs to the key.</summary>
    public CertificateFacts Certificate { get; }

    internal X509Certificate2 Holder { get; }

    internal AsymmetricAlgorithm PrivateKey { get; }

    /// <summary>Other certificates of the file, those of issuers as a rule; they go into the signature.</summary>
    internal ImmutableArray<X509Certificate2> Others { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        PrivateKey.Dispose();
        Holder.Dispose();
        foreach (var other in Others)
        {
            other.Dispose();
        }
    }
}
