using System.Collections.Frozen;
using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Parses a list of revoked certificates (RFC 5280, section 5.1).</summary>
internal static class RevocationListParser
{
    private static readonly Asn1Tag Extensions = new(TagClass.ContextSpecific, 0);

    internal sealed record Content(
        byte[] Issuer,
        DateTimeOffset ThisUpdate,
        DateTimeOffset? NextUpdate,
        FrozenDictionary<string, DateTimeOffset> Revoked
    );

    /// <param name="list">The list in DER.</param>
    /// <exception cref="AsnContentException">The bytes have another form.</exception>
    /// <exception cref="CryptographicException">The name of the issuer has another form.</exception>
    public static PdfResult<RevocationList> Parse(ReadOnlyMemory<byte> list)
    {
        var file = new AsnReader(list, AsnEncodingRules.DER);
        var whole = file.ReadSequence();
        file.ThrowIfNotEmpty();
        var signed = whole.PeekEncodedValue();
        var content = ParseContent(whole.ReadSequence(), out var named);
        var algorithm = whole.ReadEncodedValue();
        var signature = whole.ReadBitString(out var unused);
        whole.ThrowIfNotEmpty();

        // The method stands twice, once among what is signed (5.1.1.2).
        var method = named.Span.SequenceEqual(algorithm.Span)
            ? SignatureMethod.Of(algorithm)
            : null;
        return content is null || unused != 0
            ? new(
                new PdfFailure(
                    null,
                    "The list of revoked certificates says something that is not known here."
                )
            )
            : new(
                new RevocationList(content, signed, method, signature)
                {
                    Issuer = new X500DistinguishedName(content.Issuer).Name,
                    ThisUpdate = content.ThisUpdate,
                    NextUpdate = content.NextUpdate,
                    Encoded = list,
                }
            );
    }

    private static Content? ParseContent(AsnReader list, out ReadOnlyMemory<byte> method)
    {
        if (list.PeekTag().HasSameClassAndValue(Asn1Tag.Integer))
        {
            list.ReadInteger();
        }

        method = list.ReadEncodedValue();
        var issuer = list.ReadEncodedValue().ToArray();
        var thisUpdate = ReadTime(list);
        DateTimeOffset? nextUpdate =
            list.HasData && list.PeekTag().TagClass == TagClass.Universal && IsTime(list)
                ? ReadTime(list)
                : null;
        var revoked = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal);
        if (list.HasData && list.PeekTag().HasSameClassAndValue(Asn1Tag.Sequence))
        {
            var entries = list.ReadSequence();
            while (entries.HasData)
            {
                var entry = entries.ReadSequence();
                var serial = Convert.ToHexString(entry.ReadIntegerBytes().Span);
                revoked[RevocationStatement.Key(serial)] = ReadTime(entry);
            }
        }

        if (list.HasData && HasCriticalExtension(list.ReadSequence(Extensions).ReadSequence()))
        {
            return null;
        }

        return new Content(
            issuer,
            thisUpdate,
            nextUpdate,
            revoked.ToFrozenDictionary(StringComparer.Ordinal)
        );
    }

    // A critical one says that the list is only a part, or only the changes since another list (5.2.4, 5.2.5).
    internal static bool HasCriticalExtension(AsnReader extensions)
    {
        while (extensions.HasData)
        {
            var extension = extensions.ReadSequence();
            extension.ReadObjectIdentifier();
            if (
                extension.PeekTag().HasSameClassAndValue(Asn1Tag.Boolean) && extension.ReadBoolean()
            )
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsTime(AsnReader reader) =>
        reader.PeekTag().HasSameClassAndValue(Asn1Tag.UtcTime)
        || reader.PeekTag().HasSameClassAndValue(Asn1Tag.GeneralizedTime);

    private static DateTimeOffset ReadTime(AsnReader reader) =>
        reader.PeekTag().HasSameClassAndValue(Asn1Tag.UtcTime)
            ? reader.ReadUtcTime()
            : reader.ReadGeneralizedTime();
}
