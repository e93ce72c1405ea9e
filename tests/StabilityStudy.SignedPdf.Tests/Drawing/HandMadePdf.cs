using System.Text;

namespace StabilityStudy.SignedPdf.Tests.Drawing;

/// <summary>Small files written by hand, so that any one thing in them can be wrong.</summary>
internal static class HandMadePdf
{
    /// <summary>A file with these objects, numbered from 1, the first being the catalog.</summary>
    public static byte[] Of(params string[] objects) => WithTrailer("/Root 1 0 R", objects);

    /// <summary>The same with other trailer entries; /Size is added unless given.</summary>
    public static byte[] WithTrailer(string trailer, params string[] objects)
    {
        var body = new StringBuilder("%PDF-1.7\n");
        var table = new StringBuilder(
            string.Create(
                CultureInfo.InvariantCulture,
                $"xref\n0 {objects.Length + 1}\n0000000000 65535 f \n"
            )
        );
        for (var i = 0; i < objects.Length; i++)
        {
            table.Append(CultureInfo.InvariantCulture, $"{body.Length:D10} 00000 n \n");
            body.Append(CultureInfo.InvariantCulture, $"{i + 1} 0 obj\n{objects[i]}\nendobj\n");
        }

        var size = trailer.Contains("/Size", StringComparison.Ordinal)
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $"/Size {objects.Length + 1}");
        return WithEnding(body.ToString(), $"{table}trailer\n<<{trailer}{size}>>\n");
    }

    /// <summary>A body, a cross-reference section right after it, and the ending that points to that section.</summary>
    public static byte[] WithEnding(string body, string section) =>
        Bytes(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{body}{section}startxref\n{body.Length}\n%%EOF\n"
            )
        );

    /// <summary>
    /// A file with a catalog in object 1, object 2 an object stream with these contents, and object 3 the cross-reference
    /// stream with these entries of widths 1, 2 and 1 for objects 0 to 4.
    /// </summary>
    public static byte[] WithStreams(
        string objectStreamEntries,
        string objectStreamContent,
        string crossReferenceEntries = "/W[1 2 1]/Size 5",
        string? rows = null
    )
    {
        var body = new StringBuilder("%PDF-1.7\n");
        var first = body.Length;
        body.Append("1 0 obj\n<</Type/Catalog/X 4 0 R>>\nendobj\n");
        var second = body.Length;
        body.Append(
            CultureInfo.InvariantCulture,
            $"2 0 obj\n<<{objectStreamEntries}/Length {objectStreamContent.Length}>>stream\n{objectStreamContent}\nendstream endobj\n"
        );
        var third = body.Length;
        rows ??=
            "\0\0\0\0" + Row(1, first, 0) + Row(1, second, 0) + Row(1, third, 0) + Row(2, 2, 0);
        return WithEnding(
            body.ToString(),
            string.Create(
                CultureInfo.InvariantCulture,
                $"3 0 obj\n<</Type/XRef/Root 1 0 R{crossReferenceEntries}/Length {rows.Length}>>stream\n{rows}\nendstream endobj\n"
            )
        );
    }

    public static string Row(int kind, int place, int detail) =>
        new([(char)kind, (char)(place >> 8), (char)(place & 0xFF), (char)detail]);

    public static byte[] Bytes(string text) => Encoding.Latin1.GetBytes(text);
}
