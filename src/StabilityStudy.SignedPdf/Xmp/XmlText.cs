using System.Text;

namespace StabilityStudy.SignedPdf.Xmp;

/// <summary>Text as it stands in an XML element.</summary>
internal static class XmlText
{
    /// <summary>The text with markup escaped; a character that XML 1.0 does not allow (section 2.2) becomes U+FFFD.</summary>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);

        // EnumerateRunes turns half a surrogate pair into U+FFFD.
        foreach (var rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '\r' => escaped.Append("&#13;"),
                '\t' or '\n' => escaped.Append((char)rune.Value),
                < ' ' or 0xFFFE or 0xFFFF => escaped.Append('\uFFFD'),
                _ => escaped.Append(rune.ToString()),
            };
        }

        return escaped.ToString();
    }
}
