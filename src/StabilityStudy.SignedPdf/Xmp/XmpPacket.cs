using System.Text;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Xmp;

/// <summary>
/// What a document says about itself, as XMP (ISO 16684-1:2012), with the archive standards that it follows where it claims to.
/// </summary>
internal static class XmpPacket
{
    /// <summary>The packet, ready to be written as UTF-8.</summary>
    /// <param name="options">What to say.</param>
    /// <param name="identity">Names the document and, as it is never changed in place, also this instance of it.</param>
    public static string Write(RewriteOptions options, Guid identity)
    {
        var packet = new StringBuilder();
        packet.Append("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n");
        packet.Append("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n");
        packet.Append("<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n");
        packet.Append("<rdf:Description rdf:about=\"\"\n");
        packet.Append(" xmlns:dc=\"http://purl.org/dc/elements/1.1/\"\n");
        packet.Append(" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\"\n");
        packet.Append(" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\"\n");
        packet.Append(" xmlns:xmpMM=\"http://ns.adobe.com/xap/1.0/mm/\">\n");
        Append(packet, "dc:format", "application/pdf");
        AppendList(packet, "dc:title", "rdf:Alt", " xml:lang=\"x-default\"", options.Title);
        if (options.Author is { } author)
        {
            AppendList(packet, "dc:creator", "rdf:Seq", "", author);
        }

        if (options.Language is { } language)
        {
            AppendList(packet, "dc:language", "rdf:Bag", "", language);
        }

        Append(packet, "xmp:CreatorTool", options.CreatorTool);
        Append(packet, "pdf:Producer", options.CreatorTool);
        if (options.Date is { } date)
        {
            var text = date.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
            Append(packet, "xmp:CreateDate", text);
            Append(packet, "xmp:ModifyDate", text);
        }

        var uuid = "uuid:" + identity.ToString("D", CultureInfo.InvariantCulture);
        Append(packet, "xmpMM:DocumentID", uuid);
        Append(packet, "xmpMM:InstanceID", uuid);
        packet.Append("</rdf:Description>\n");
        if (options.ClaimsArchive)
        {
            packet.Append(ArchiveClaim.Descriptions);
        }

        packet.Append("</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n");
        return packet.ToString();
    }

    private static void Append(StringBuilder packet, string name, string text) =>
        packet.Append(CultureInfo.InvariantCulture, $"<{name}>{XmlText.Escape(text)}</{name}>\n");

    private static void AppendList(
        StringBuilder packet,
        string name,
        string list,
        string attribute,
        string text
    ) =>
        packet.Append(
            CultureInfo.InvariantCulture,
            $"<{name}><{list}><rdf:li{attribute}>{XmlText.Escape(text)}</rdf:li></{list}></{name}>\n"
        );
}
