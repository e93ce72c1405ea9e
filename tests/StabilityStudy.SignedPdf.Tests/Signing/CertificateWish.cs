using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>A certificate that is to be made, right unless said otherwise.</summary>
internal sealed record CertificateWish(string Name)
{
    private static int s_serial = 500_000;

    /// <summary>Who issues it; null for one that issues itself.</summary>
    public Signer? By { get; init; } = Signers.Authority;

    public AsymmetricAlgorithm Key { get; init; } = ECDsa.Create(ECCurve.NamedCurves.nistP256);

    /// <summary>How the issuer signs; null for PKCS#1 or a curve with SHA-256.</summary>
    public Func<AsymmetricAlgorithm, X509SignatureGenerator>? Method { get; init; }

    public bool IsAuthority { get; init; }

    public X509KeyUsageFlags Usage { get; init; } = X509KeyUsageFlags.DigitalSignature;

    public IReadOnlyList<string> Purposes { get; init; } = [];

    public IReadOnlyList<X509Extension> Extensions { get; init; } = [];

    public DateTimeOffset From { get; init; } = Signers.Start;

    public DateTimeOffset To { get; init; } = Signers.End;

    public static X509SignatureGenerator Md5(AsymmetricAlgorithm key) =>
        new OldSignatureGenerator((RSA)key, HashAlgorithmName.MD5);

    public static X509SignatureGenerator Sha1(AsymmetricAlgorithm key) =>
        new OldSignatureGenerator((RSA)key, HashAlgorithmName.SHA1);

    public static X509SignatureGenerator Pss(AsymmetricAlgorithm key) =>
        X509SignatureGenerator.CreateForRSA((RSA)key, RSASignaturePadding.Pss);

    public Signer Made()
    {
        var name = new X500DistinguishedName($"CN={Name}");
        var request = new CertificateRequest(name, new PublicKey(Key), HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(
            new X509BasicConstraintsExtension(IsAuthority, false, 0, true)
        );
        request.CertificateExtensions.Add(
            new X509KeyUsageExtension(
                IsAuthority ? X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign : Usage,
                true
            )
        );
        if (Purposes.Count > 0)
        {
            request.CertificateExtensions.Add(
                new X509EnhancedKeyUsageExtension(
                    [.. Purposes.Select(static purpose => new Oid(purpose))],
                    critical: true
                )
            );
        }

        foreach (var extension in Extensions)
        {
            request.CertificateExtensions.Add(extension);
        }

        var issuing = By?.Key ?? Key;
        return new Signer(
            request.Create(
                By?.Certificate.SubjectName ?? name,
                (Method ?? Generator)(issuing),
                From,
                To,
                BitConverter.GetBytes(Interlocked.Increment(ref s_serial)).Reverse().ToArray()
            ),
            Key
        );
    }

    private static X509SignatureGenerator Generator(AsymmetricAlgorithm key) =>
        key is RSA rsa
            ? X509SignatureGenerator.CreateForRSA(rsa, RSASignaturePadding.Pkcs1)
            : X509SignatureGenerator.CreateForECDsa((ECDsa)key);
}
