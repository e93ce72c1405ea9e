using System.Formats.Asn1;
using System.Security.Cryptography;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Checks that a signature container, or an archive time stamp, is written in the one way allowed here (RFC 5652, section 5): DER, a signature detached and a time stamp with what it says, one signer, one
/// digest algorithm, no revocation lists. What is not signed in it must not be free to change either.
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
    /// <param name="bytes">The bytes.</param>
    /// <param name="problem">What is wrong when there is none.</param>
    public static ContainerForm? Of(ReadOnlyMemory<byte> bytes, out SignatureProblem problem) =>
        Of(bytes, isTimeStamp: false, out problem);

    /// <summary>The time stamp at the start of the bytes; null when there is none, or it has another form.</summary>
    public static ContainerForm? OfTimeStamp(ReadOnlyMemory<byte> bytes) =>
        Of(bytes, isTimeStamp: true, out _);

    private static ContainerForm? Of(
        ReadOnlyMemory<byte> bytes,
        bool isTimeStamp,
        out SignatureProblem problem
    )
    {
        problem = SignatureProblem.ContainerMalformed;
        try
        {
            var reader = new AsnReader(bytes, AsnEncodingRules.DER);
            var length = reader.PeekEncodedValue().Length;
            return Container(reader.ReadSequence(), length, isTimeStamp, ref problem);
        }
        catch (AsnContentException)
        {
            return null;
        }
    }

    private static ContainerForm? Container(
        AsnReader container,
        int length,
        bool isTimeStamp,
        ref SignatureProblem problem
    )
    {
        if (!Is(container.ReadObjectIdentifier(), ObjectIdentifiers.SignedData))
        {
            return null;
        }

        var explicitTag = container.ReadSequence(Zero);
        container.ThrowIfNotEmpty();
        var signed = explicitTag.ReadSequence();
        explicitTag.ThrowIfNotEmpty();
        // The version follows from the kind of content (5.1).
        if (isTimeStamp ? signed.ReadInteger() != 3 : !HasVersion(signed, ref problem))
        {
            return null;
        }

        var digests = signed.ReadSetOf();
        var digest = digests.ReadEncodedValue();
        digests.ThrowIfNotEmpty();
        var content = signed.ReadSequence();
        if (
            !Is(
                content.ReadObjectIdentifier(),
                isTimeStamp ? ObjectIdentifiers.TimeStampInformation : ObjectIdentifiers.Data
            )
        )
        {
            return null;
        }

        if (isTimeStamp)
        {
            var stated = content.ReadSequence(Zero);
            stated.ReadOctetString();
            stated.ThrowIfNotEmpty();
        }

        content.ThrowIfNotEmpty();
        var certificates = signed.ReadSetOf(Zero);
        while (certificates.HasData)
        {
            certificates.ReadSequence();
        }

        var signers = signed.ReadSetOf();
        var signer = signers.ReadSequence();
        signers.ThrowIfNotEmpty();
        signed.ThrowIfNotEmpty();
        return Signer(signer, digest, length, isTimeStamp, ref problem);
    }

    // The third version names the signer by a key identifier (5.1, 5.3).
    private static bool HasVersion(AsnReader reader, ref SignatureProblem problem)
    {
        var version = reader.ReadInteger();
        if (version == 3)
        {
            problem = SignatureProblem.SignerNamedByKey;
        }

        return version == 1;
    }

    private static ContainerForm? Signer(
        AsnReader signer,
        ReadOnlyMemory<byte> digest,
        int length,
        bool isTimeStamp,
        ref SignatureProblem problem
    )
    {
        if (!HasVersion(signer, ref problem))
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
        var method = signer.ReadEncodedValue();
        var digestMethod = CryptographicPolicy.Digest(digestName);
        // Authorities also use the names of RSA that say the digest.
        if (
            !IsAllowed(method, digestMethod)
            && !(isTimeStamp && SignatureMethod.Of(method)?.Digest == digestMethod)
        )
        {
            problem = SignatureProblem.AlgorithmNotSupported;
            return null;
        }

        signer.ReadOctetString();
        if (signer.HasData && !isTimeStamp)
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

    // One name for each algorithm, and the one with the digest where there is one: libraries take the others for the same.
    private static bool IsAllowed(ReadOnlyMemory<byte> algorithm, HashAlgorithmName? digest)
    {
        var reader = new AsnReader(algorithm, AsnEncodingRules.DER).ReadSequence();
        if (!Is(reader.ReadObjectIdentifier(), ObjectIdentifiers.Rsa))
        {
            return SignatureMethod.Of(algorithm) is { } method
                && method.Digest == digest
                && method.Padding != RSASignaturePadding.Pkcs1;
        }

        // Some writers put the null that RFC 3370, section 3.2, asks for, some leave it out.
        if (reader.HasData)
        {
            reader.ReadNull();
        }

        return !reader.HasData && digest is not null;
    }

    private static bool Is(string identifier, string expected) =>
        string.Equals(identifier, expected, StringComparison.Ordinal);
}
