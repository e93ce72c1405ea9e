using System.Formats.Asn1;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Checks that a signature container is written in the one way allowed here (RFC 5652, section 5): DER, detached, one signer, one digest
/// algorithm, no revocation lists. What is not signed in it must not be free to change either.
/// </summary>
/// <param name="Length">Length of the container, bytes.</param>
/// <param name="Issuer">The issuer in the identification of the signer's certificate, encoded.</param>
/// <param name="SerialNumber">The serial number there.</param>
internal sealed record ContainerForm(
    int Length,
    ReadOnlyMemory<byte> Issuer,
    ReadOnlyMemory<byte> SerialNumber
)
{
    private static readonly Asn1Tag Zero = new(TagClass.ContextSpecific, 0, isConstructed: true);
    private static readonly Asn1Tag One = new(TagClass.ContextSpecific, 1, isConstructed: true);

    /// <summary>The container at the start of the bytes; null when there is none, or it has another form.</summary>
    public static ContainerForm? Of(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            var reader = new AsnReader(bytes, AsnEncodingRules.DER);
            var length = reader.PeekEncodedValue().Length;
            return Container(reader.ReadSequence(), length);
        }
        catch (AsnContentException)
        {
            return null;
        }
    }

    private static ContainerForm? Container(AsnReader container, int length)
    {
        if (!Is(container.ReadObjectIdentifier(), ObjectIdentifiers.SignedData))
        {
            return null;
        }

        var explicitTag = container.ReadSequence(Zero);
        container.ThrowIfNotEmpty();
        var signed = explicitTag.ReadSequence();
        explicitTag.ThrowIfNotEmpty();
        if (signed.ReadInteger() != 1)
        {
            return null;
        }

        var digests = signed.ReadSetOf();
        var digest = digests.ReadEncodedValue();
        digests.ThrowIfNotEmpty();
        var content = signed.ReadSequence();
        if (!Is(content.ReadObjectIdentifier(), ObjectIdentifiers.Data) || content.HasData)
        {
            return null;
        }

        var certificates = signed.ReadSetOf(Zero);
        while (certificates.HasData)
        {
            certificates.ReadSequence();
        }

        var signers = signed.ReadSetOf();
        var signer = signers.ReadSequence();
        signers.ThrowIfNotEmpty();
        signed.ThrowIfNotEmpty();
        return Signer(signer, digest, length);
    }

    private static ContainerForm? Signer(AsnReader signer, ReadOnlyMemory<byte> digest, int length)
    {
        if (signer.ReadInteger() != 1)
        {
            return null;
        }

        var identification = signer.ReadSequence();
        var issuer = identification.ReadEncodedValue();
        var serial = identification.ReadIntegerBytes();
        identification.ThrowIfNotEmpty();
        if (!signer.ReadEncodedValue().Span.SequenceEqual(digest.Span))
        {
            return null;
        }

        var algorithm = new AsnReader(digest, AsnEncodingRules.DER).ReadSequence();
        var digestName = algorithm.ReadObjectIdentifier();
        if (algorithm.HasData)
        {
            algorithm.ReadNull();
            algorithm.ThrowIfNotEmpty();
        }

        signer.ReadSetOf(Zero);
        if (!IsAllowed(signer.ReadSequence(), digestName))
        {
            return null;
        }

        signer.ReadOctetString();
        if (signer.HasData)
        {
            // The only unsigned attribute is one time stamp.
            var attributes = signer.ReadSetOf(One);
            var attribute = attributes.ReadSequence();
            attributes.ThrowIfNotEmpty();
            var values = Is(attribute.ReadObjectIdentifier(), ObjectIdentifiers.TimeStampToken)
                ? attribute.ReadSetOf()
                : null;
            values?.ReadEncodedValue();
            if (values is null || values.HasData || attribute.HasData)
            {
                return null;
            }
        }

        return signer.HasData ? null : new ContainerForm(length, issuer, serial);
    }

    // One name for each algorithm, and for curves the one with the digest: libraries take the others for the same.
    private static bool IsAllowed(AsnReader algorithm, string digest)
    {
        var name = algorithm.ReadObjectIdentifier();
        if (Is(name, ObjectIdentifiers.Rsa))
        {
            // Some writers put the null that RFC 3370, section 3.2, asks for, some leave it out.
            if (algorithm.HasData)
            {
                algorithm.ReadNull();
            }

            return !algorithm.HasData;
        }

        var withDigest = digest switch
        {
            ObjectIdentifiers.Sha256 => ObjectIdentifiers.EcdsaWithSha256,
            ObjectIdentifiers.Sha384 => ObjectIdentifiers.EcdsaWithSha384,
            ObjectIdentifiers.Sha512 => ObjectIdentifiers.EcdsaWithSha512,
            _ => null,
        };
        return withDigest is not null && Is(name, withDigest) && !algorithm.HasData;
    }

    private static bool Is(string identifier, string expected) =>
        string.Equals(identifier, expected, StringComparison.Ordinal);
}
