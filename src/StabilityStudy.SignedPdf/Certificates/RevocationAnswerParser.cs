using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Parses an answer about revoked certificates (RFC 6960, section 4.2.1).</summary>
internal static class RevocationAnswerParser
{
    private const string BasicResponse = "1.3.6.1.5.5.7.48.1.1";
    private const string Sha1 = "1.3.14.3.2.26";

    private static readonly Asn1Tag Zero = new(TagClass.ContextSpecific, 0, isConstructed: true);
    private static readonly Asn1Tag One = new(TagClass.ContextSpecific, 1, isConstructed: true);
    private static readonly Asn1Tag Two = new(TagClass.ContextSpecific, 2, isConstructed: true);
    private static readonly Asn1Tag Good = new(TagClass.ContextSpecific, 0);
    private static readonly Asn1Tag Unknown = new(TagClass.ContextSpecific, 2);

    private static PdfFailure NotKnown { get; } =
        new(null, "The answer about revoked certificates says something that is not known here.");

    /// <summary>What all answers of a file have in common.</summary>
    internal sealed record Response(
        ReadOnlyMemory<byte> Signed,
        SignatureMethod? Method,
        ReadOnlyMemory<byte> Signature,
        ReadOnlyMemory<byte>? ResponderName,
        ReadOnlyMemory<byte> ResponderKeyHash,
        ImmutableArray<X509Certificate2> Certificates
    );

    /// <summary>What is said about one certificate.</summary>
    internal sealed record Single(
        HashAlgorithmName Hash,
        ReadOnlyMemory<byte> IssuerNameHash,
        ReadOnlyMemory<byte> IssuerKeyHash,
        string SerialNumber,
        bool IsKnown,
        DateTimeOffset? RevokedAt,
        DateTimeOffset ThisUpdate,
        DateTimeOffset? NextUpdate
    );

    /// <summary>The answers of a file, one for each certificate.</summary>
    /// <param name="file">The file in DER.</param>
    /// <exception cref="AsnContentException">The bytes have another form.</exception>
    /// <exception cref="CryptographicException">A certificate or name has another form.</exception>
    public static PdfResult<ImmutableArray<RevocationAnswer>> Parse(ReadOnlyMemory<byte> file)
    {
        var reader = new AsnReader(file, AsnEncodingRules.DER);
        var whole = reader.ReadSequence();
        reader.ThrowIfNotEmpty();
        if (whole.ReadEnumeratedBytes().Span is not [0] || !whole.HasData)
        {
            return new(
                new PdfFailure(
                    null,
                    "The answer about revoked certificates is a refusal to answer. Ask the issuer again."
                )
            );
        }

        var bytes = whole.ReadSequence(Zero);
        whole.ThrowIfNotEmpty();
        var typed = bytes.ReadSequence();
        bytes.ThrowIfNotEmpty();
        if (typed.ReadObjectIdentifier() != BasicResponse)
        {
            return new(NotKnown);
        }

        var basic = new AsnReader(typed.ReadOctetString(), AsnEncodingRules.DER);
        typed.ThrowIfNotEmpty();
        return ParseBasic(basic.ReadSequence(), file);
    }

    private static PdfResult<ImmutableArray<RevocationAnswer>> ParseBasic(
        AsnReader basic,
        ReadOnlyMemory<byte> file
    )
    {
        var signed = basic.PeekEncodedValue();
        var data = basic.ReadSequence();
        var method = SignatureMethod.Of(basic.ReadEncodedValue());
        var signature = basic.ReadBitString(out var unused);
        var certificates = ImmutableArray.CreateBuilder<X509Certificate2>();
        if (basic.HasData)
        {
            var items = basic.ReadSequence(Zero).ReadSequence();
            while (items.HasData)
            {
                certificates.Add(
                    X509CertificateLoader.LoadCertificate(items.ReadEncodedValue().Span)
                );
            }
        }

        basic.ThrowIfNotEmpty();
        if (data.PeekTag().HasSameClassAndValue(Zero))
        {
            data.ReadSequence(Zero).ReadInteger();
        }

        // "null" alone would become an empty name.
        var name = data.PeekTag().HasSameClassAndValue(One)
            ? data.ReadSequence(One).ReadEncodedValue()
            : (ReadOnlyMemory<byte>?)null;
        ReadOnlyMemory<byte> key = name is null
            ? data.ReadSequence(Two).ReadOctetString()
            : default;
        data.ReadGeneralizedTime();
        var singles = ImmutableArray.CreateBuilder<Single>();
        var entries = data.ReadSequence();
        while (entries.HasData)
        {
            if (ParseSingle(entries.ReadSequence()) is not { } single)
            {
                return new(NotKnown);
            }

            singles.Add(single);
        }

        if (
            singles.Count == 0
            || unused != 0
            || (
                data.HasData
                && RevocationListParser.HasCriticalExtension(data.ReadSequence(One).ReadSequence())
            )
        )
        {
            return new(NotKnown);
        }

        var response = new Response(
            signed.ToArray(),
            method,
            signature,
            name,
            key,
            certificates.DrainToImmutable()
        );
        var issuer = name is { } bytes
            ? new X500DistinguishedName(bytes.Span).Name
            : $"the holder of the key {Convert.ToHexStringLower(key.Span)}";
        return new([
            .. singles.Select(single => new RevocationAnswer(response, single)
            {
                Issuer = issuer,
                ThisUpdate = single.ThisUpdate,
                NextUpdate = single.NextUpdate,
                Encoded = file,
            }),
        ]);
    }

    private static Single? ParseSingle(AsnReader entry)
    {
        var certificate = entry.ReadSequence();
        var algorithm = certificate.ReadSequence().ReadObjectIdentifier();
        var names = certificate.ReadOctetString();
        var keys = certificate.ReadOctetString();
        var serial = Convert.ToHexString(certificate.ReadIntegerBytes().Span);
        certificate.ThrowIfNotEmpty();
        var (isKnown, revoked) = ParseStatus(entry);
        var thisUpdate = entry.ReadGeneralizedTime();
        DateTimeOffset? nextUpdate =
            entry.HasData && entry.PeekTag().HasSameClassAndValue(Zero)
                ? entry.ReadSequence(Zero).ReadGeneralizedTime()
                : null;
        var isStrange =
            entry.HasData
            && RevocationListParser.HasCriticalExtension(entry.ReadSequence(One).ReadSequence());
        HashAlgorithmName? hash =
            algorithm == Sha1 ? HashAlgorithmName.SHA1 : CryptographicPolicy.Digest(algorithm);
        return isStrange || hash is not { } known
            ? null
            : new(known, names, keys, serial, isKnown, revoked, thisUpdate, nextUpdate);
    }

    private static (bool IsKnown, DateTimeOffset? RevokedAt) ParseStatus(AsnReader entry)
    {
        if (entry.PeekTag().HasSameClassAndValue(Good))
        {
            entry.ReadNull(Good);
            return (true, null);
        }

        if (entry.PeekTag().HasSameClassAndValue(Unknown))
        {
            entry.ReadNull(Unknown);
            return (false, null);
        }

        return (true, entry.ReadSequence(One).ReadGeneralizedTime());
    }
}
