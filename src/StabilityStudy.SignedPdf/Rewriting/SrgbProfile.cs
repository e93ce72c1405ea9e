using System.Buffers.Binary;
using System.Text;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// A profile of the sRGB color space, for the output intent of a file: three primaries and one curve (ICC.1:2001-04, version
/// 2 of the format; IEC 61966-2-1:1999).
/// </summary>
internal static class SrgbProfile
{
    /// <summary>Name under which the color space is registered.</summary>
    public const string Identifier = "sRGB IEC61966-2.1";

    private const int HeaderLength = 128;
    private const int TagEntryLength = 12;
    private const int CurvePoints = 1024;

    /// <summary>White of the connection space, which is also the illuminant of the header: D50.</summary>
    private static readonly (double X, double Y, double Z) s_white = (0.9642, 1, 0.8249);

    /// <summary>The bytes; the same on every machine.</summary>
    public static byte[] Bytes()
    {
        // The primaries of IEC 61966-2-1, adapted from D65 to D50 by the Bradford transform.
        var curve = Curve();
        (string Signature, byte[] Data)[] tags =
        [
            ("desc", Description(Identifier)),
            ("cprt", Typed("text", Encoding.ASCII.GetBytes("Free of copyright\0"))),
            ("wtpt", Xyz(s_white)),
            ("rXYZ", Xyz((0.4360747, 0.2225045, 0.0139322))),
            ("gXYZ", Xyz((0.3850649, 0.7168786, 0.0971045))),
            ("bXYZ", Xyz((0.1430804, 0.0606169, 0.7141733))),
            ("rTRC", curve),
            ("gTRC", curve),
            ("bTRC", curve),
        ];
        using var data = new MemoryStream();
        using var table = new MemoryStream();
        Number(table, tags.Length);
        var start = HeaderLength + 4 + (TagEntryLength * tags.Length);
        var places = new Dictionary<byte[], int>();
        foreach (var (signature, bytes) in tags)
        {
            if (!places.TryGetValue(bytes, out var place))
            {
                place = start + (int)data.Length;
                places.Add(bytes, place);
                data.Write(bytes);
                data.Write(new byte[(4 - (bytes.Length % 4)) % 4]);
            }

            table.Write(Encoding.ASCII.GetBytes(signature));
            Number(table, place);
            Number(table, bytes.Length);
        }

        return [.. Header(start + (int)data.Length), .. table.ToArray(), .. data.ToArray()];
    }

    /// <summary>The light that a value between 0 and 1 stands for (IEC 61966-2-1:1999, 5.2).</summary>
    internal static double Linear(double value) =>
        value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);

    private static byte[] Header(int length)
    {
        var header = new byte[HeaderLength];
        void Text(int at, string text) => Encoding.ASCII.GetBytes(text).CopyTo(header, at);
        BinaryPrimitives.WriteInt32BigEndian(header, length);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(8), 0x02100000);
        Text(12, "mntr");
        Text(16, "RGB ");
        Text(20, "XYZ ");
        // The format asks for a date; the one of the standard that the profile follows.
        BinaryPrimitives.WriteInt16BigEndian(header.AsSpan(24), 1999);
        BinaryPrimitives.WriteInt16BigEndian(header.AsSpan(26), 10);
        BinaryPrimitives.WriteInt16BigEndian(header.AsSpan(28), 1);
        Text(36, "acsp");
        Xyz(s_white)[8..].CopyTo(header, 68);
        return header;
    }

    private static byte[] Typed(string type, byte[] content) =>
        [.. Encoding.ASCII.GetBytes(type), 0, 0, 0, 0, .. content];

    private static byte[] Xyz((double X, double Y, double Z) color)
    {
        using var content = new MemoryStream();
        foreach (var value in new[] { color.X, color.Y, color.Z })
        {
            Number(content, (int)Math.Round(value * 65536));
        }

        return Typed("XYZ ", content.ToArray());
    }

    /// <summary>The name in ASCII; empty in the two other alphabets that the type has room for.</summary>
    private static byte[] Description(string text)
    {
        const int EmptyUnicode = 8;
        const int EmptyScript = 70;
        using var content = new MemoryStream();
        Number(content, text.Length + 1);
        content.Write(Encoding.ASCII.GetBytes(text + '\0'));
        content.Write(new byte[EmptyUnicode + EmptyScript]);
        return Typed("desc", content.ToArray());
    }

    private static byte[] Curve()
    {
        using var content = new MemoryStream();
        Number(content, CurvePoints);
        Span<byte> point = stackalloc byte[2];
        for (var i = 0; i < CurvePoints; i++)
        {
            BinaryPrimitives.WriteUInt16BigEndian(
                point,
                (ushort)Math.Round(ushort.MaxValue * Linear(i / (CurvePoints - 1.0)))
            );
            content.Write(point);
        }

        return Typed("curv", content.ToArray());
    }

    private static void Number(MemoryStream stream, int value)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        stream.Write(bytes);
    }
}
