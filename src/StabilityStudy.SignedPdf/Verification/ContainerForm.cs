using System.Formats.Asn1;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Checks that a signature container is written in the one way allowed here (RFC 5652, section 5): DER, detached, one signer, one digest
/// algorithm, no revocation lists. What is not signed in it must not be free to change either.
/// </summary>
internal static class ContainerForm
{
    private static readonly Asn1Tag Zero = new(TagClass.ContextSpecific, 0, isConstructed: true);
    private static readonly Asn1Tag One = new(TagClass.ContextSpecific, 1, isConstructed: true);

    /// <summary>Length of the container at the start of the bytes; null when there is none, or it has another form.</summary>
    public static int? LengthOf(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            var reader = new AsnReader(bytes, AsnEncodingRules.DER);
            var length = reader.PeekEncodedValue().Length;
            return IsAllowed(reader.ReadSequence()) ? length : null;
        }
        catch (AsnContentException)
        {
            return null;
        }
    }

    private static bool IsAllowed(AsnReader container)
    {
        if (!Is(container.ReadObjectIdentifier(), ObjectIdentifiers.SignedData))
        {
            return false;
        }

        var explicitTag = container.ReadSequence(Zero);
        container.ThrowIfNotEmpty();
        var signed = explicitTag.ReadSequence();
        explicitTag.ThrowIfNotEmpty();
        if (signed.ReadInteger() != 1)
        {
            return false;
        }

        var digests = signed.ReadSetOf();
        var digest = digests.ReadEncodedValue();
        digests.ThrowIfNotEmpty();
        var content = signed.ReadSequence();
        if (!Is(content.ReadObjectIdentifier(), ObjectIdentifiers.Data) || content.HasData)
        {
            return false;
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
        return IsAllowedSigner(signer, digest);
    }

    private static bool IsAllowedSigner(AsnReader signer, ReadOnlyMemory<byte> digest)
    {
        if (signer.ReadInteger() != 1)
        {
            return false;
        }

        signer.ReadSequence();
        if (!signer.ReadEncodedValue().Span.SequenceEqual(digest.Span))
        {
            return false;
        }

        var algorithm = new AsnReader(digest, AsnEncodingRules.DER).ReadSequence();
        algorithm.ReadObjectIdentifier();
        if (algorithm.HasData)
        {
            algorithm.ReadNull();
            algorithm.ThrowIfNotEmpty();
        }

        signer.ReadSetOf(Zero);
        signer.ReadSequence();
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
                return false;
            }
        }

        return !signer.HasData;
    }

    private static bool Is(string identifier, string expected) =>
        string.Equals(identifier, expected, StringComparison.Ordinal);
}
