using System.Collections.Frozen;
using System.Net;
using System.Text;
using System.Xml.Linq;
using StabilityStudy.Reporting.Charts;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Html;

/// <summary>Writes elements as HTML: void elements without an end tag, a style sheet as it is, everything else escaped.</summary>
internal static class HtmlText
{
    /// <summary>Elements within a line, after which a line feed would be read as a space.</summary>
    private static readonly FrozenSet<string> s_inLine = FrozenSet.Create(
        "a",
        "span",
        "strong",
        "svg"
    );

    public static string Of(XElement page)
    {
        var text = new StringBuilder();
        Write(page, text);
        return text.ToString();
    }

    private static void Write(XElement element, StringBuilder text)
    {
        var name = element.Name.LocalName;
        text.Append('<').Append(name);
        foreach (var attribute in element.Attributes())
        {
            if (!attribute.IsNamespaceDeclaration)
            {
                // References inside a drawing need no prefix in HTML.
                text.Append(' ')
                    .Append(attribute.Name.LocalName)
                    .Append("=\"")
                    .Append(WebUtility.HtmlEncode(TextLines.Visible(attribute.Value)))
                    .Append('"');
            }
        }

        text.Append('>');
        if (name is "meta" or "br")
        {
            return;
        }

        foreach (var node in element.Nodes())
        {
            switch (node)
            {
                case XElement child:
                    Write(child, text);
                    break;
                case XText words:
                    text.Append(name == "style" ? words.Value : Escaped(words.Value));
                    break;
                default:
                    break;
            }
        }

        text.Append("</").Append(name).Append('>');
        if (element.Name.Namespace != SvgNames.Svg && !s_inLine.Contains(name))
        {
            text.Append('\n');
        }
    }

    /// <summary>Only what HTML gives a meaning: letters of any script stay as they are.</summary>
    private static string Escaped(string words) =>
        TextLines
            .Visible(words)
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal);
}
