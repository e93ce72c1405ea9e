using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>A certificate with its key, made for the tests.</summary>
internal sealed record Signer(X509Certificate2 Certificate, AsymmetricAlgorithm Key)
{
    public byte[] CertificatePem =>
        Encoding.ASCII.GetBytes(Certificate.ExportCertificatePem() + "\n");

    public byte[] KeyPem => Encoding.ASCII.GetBytes(Key.ExportPkcs8PrivateKeyPem() + "\n");

    public SigningKey SigningKey(params Signer[] issuers)
    {
        byte[] all = [.. CertificatePem, .. issuers.SelectMany(static one => one.CertificatePem)];
        Assert.True(
            SigningKeyReader.Read(KeyPem, all, null).TryGet(out var key, out var problem),
            problem.ToString()
        );
        return key;
    }
}

/// <summary>An authority and the people and time stamp authority it vouches for; all invented.</summary>
internal static class Signers
{
    public static DateTimeOffset Start { get; } = new(2025, 1, 1, 0, 0, 0, TimeSpan.Zero);
    public static DateTimeOffset Time { get; } = new(2026, 3, 4, 9, 30, 0, TimeSpan.FromHours(-5));
    public static DateTimeOffset End { get; } = new(2060, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private const X509KeyUsageFlags Signing =
        X509KeyUsageFlags.DigitalSignature | X509KeyUsageFlags.NonRepudiation;
    private static int s_serial = 1000;

    public static Signer Authority { get; } = MakeAuthority("Trial Authority");
    public static Signer OtherAuthority { get; } = MakeAuthority("Other Authority");
    public static Signer Author { get; } = Issue("Ada Author", rsa: true);
    public static Signer Approver { get; } = Issue("Boris Approver", rsa: false);

    public static TrustAnchors Trust { get; } = Anchors(Authority);

    public static VerificationOptions Trusting { get; } = new(Trust, []) { TimeAnchors = Trust };

    public static TrustAnchors Anchors(params Signer[] trusted) =>
        TrustAnchors.Of(
            trusted.Select(static one =>
                Drawing.Rewritten.Value(TrustFile.Read(one.CertificatePem))
            )
        );

    public static Signer MakeAuthority(string name)
    {
        var key = RSA.Create(2048);
        var request = new CertificateRequest(
            $"CN={name}",
            key,
            HashAlgorithmName.SHA256,
            RSASignaturePadding.Pkcs1
        );
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(
            new X509KeyUsageExtension(
                X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign,
                true
            )
        );
        request.CertificateExtensions.Add(
            new X509SubjectKeyIdentifierExtension(request.PublicKey, false)
        );
        var made = request.CreateSelfSigned(Start.AddYears(-5), End.AddYears(20));
        return new Signer(X509CertificateLoader.LoadCertificate(made.RawData), key);
    }

    public static Signer Issue(
        string name,
        bool rsa,
        Signer? by = null,
        DateTimeOffset? from = null,
        DateTimeOffset? to = null,
        X509KeyUsageFlags usage = Signing,
        string? purpose = null
    )
    {
        AsymmetricAlgorithm key = rsa
            ? RSA.Create(2048)
            : ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = key is RSA rsaKey
            ? new CertificateRequest(
                $"CN={name}",
                rsaKey,
                HashAlgorithmName.SHA256,
                RSASignaturePadding.Pkcs1
            )
            : new CertificateRequest($"CN={name}", (ECDsa)key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(usage, true));
        if (purpose is not null)
        {
            request.CertificateExtensions.Add(
                new X509EnhancedKeyUsageExtension([new Oid(purpose)], critical: true)
            );
        }

        var issuer = by ?? Authority;
        var certificate = request.Create(
            issuer.Certificate.SubjectName,
            X509SignatureGenerator.CreateForRSA((RSA)issuer.Key, RSASignaturePadding.Pkcs1),
            from ?? Start,
            to ?? End,
            BitConverter.GetBytes(Interlocked.Increment(ref s_serial)).Reverse().ToArray()
        );
        return new Signer(certificate, key);
    }

    /// <summary>A list of the authority's that names these certificates.</summary>
    public static byte[] RevocationListOf(
        DateTimeOffset made,
        DateTimeOffset revoked,
        params Signer[] signers
    ) => RevocationListBy(Authority, method: null, made, revoked, signers);

    /// <summary>A list in the name of an authority, good for thirty days.</summary>
    /// <param name="by">The authority.</param>
    /// <param name="method">Who signs it, and how; null for the authority with SHA-256.</param>
    /// <param name="made">When it was made.</param>
    /// <param name="revoked">When the certificates were revoked.</param>
    /// <param name="signers">Whose certificates.</param>
    public static byte[] RevocationListBy(
        Signer by,
        X509SignatureGenerator? method,
        DateTimeOffset made,
        DateTimeOffset revoked,
        params Signer[] signers
    )
    {
        var builder = new CertificateRevocationListBuilder();
        foreach (var signer in signers)
        {
            builder.AddEntry(signer.Certificate, revoked);
        }

        return builder.Build(
            by.Certificate.SubjectName,
            method ?? X509SignatureGenerator.CreateForRSA((RSA)by.Key, RSASignaturePadding.Pkcs1),
            1,
            made.AddDays(30),
            HashAlgorithmName.SHA256,
            X509AuthorityKeyIdentifierExtension.CreateFromSubjectKeyIdentifier(
                new X509SubjectKeyIdentifierExtension(by.Certificate.PublicKey, false)
            ),
            made
        );
    }
}
