using System.Collections.Frozen;
using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Text;

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

    /// <exception cref="AsnContentException">The bytes have another form.</exception>
    public static PdfResult<RevocationList> Parse(ReadOnlyMemory<byte> file)
    {
        if (PemKeyFile.Looks(file.Span))
        {
            var text = Encoding.Latin1.GetString(file.Span);
            if (
                !PemEncoding.TryFind(text, out var fields)
                || !text.AsSpan()[fields.Label].SequenceEqual("X509 CRL")
            )
            {
                return new(new PdfFailure(null, "This is no list of revoked certificates."));
            }

            file = Convert.FromBase64String(text[fields.Base64Data]);
        }

        var whole = new AsnReader(file, AsnEncodingRules.DER).ReadSequence();
        var signed = whole.PeekEncodedValue();
        var content = ParseContent(whole.ReadSequence());
        var algorithm = whole.ReadSequence().ReadObjectIdentifier();
        var signature = whole.ReadBitString(out _);
        whole.ThrowIfNotEmpty();
        return content is null
            ? new(
                new PdfFailure(
                    null,
                    "The list of revoked certificates says something that is not known here."
                )
            )
            : new(new RevocationList(content, signed, algorithm, signature));
    }

    private static Content? ParseContent(AsnReader list)
    {
        if (list.PeekTag().HasSameClassAndValue(Asn1Tag.Integer))
        {
            list.ReadInteger();
        }

        list.ReadSequence();
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
                revoked[RevocationList.Key(serial)] = ReadTime(entry);
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
    private static bool HasCriticalExtension(AsnReader extensions)
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
