using System.Buffers.Binary;
using System.Text;

namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>The tables of a TrueType font (ISO/IEC 14496-22). Reading outside a table gives zero, which the checks of the font then refuse.</summary>
internal sealed class FontTables
{
    private readonly Dictionary<string, ReadOnlyMemory<byte>> _tables = new(StringComparer.Ordinal);

    public FontTables(ReadOnlyMemory<byte> font)
    {
        var count = UInt16(font, 4);
        for (var i = 0; i < count; i++)
        {
            var entry = 12 + (16 * i);
            var (start, length) = (UInt32(font, entry + 8), UInt32(font, entry + 12));
            if (entry + 16 <= font.Length && start + (long)length <= font.Length)
            {
                var name = Encoding.Latin1.GetString(font.Span.Slice(entry, 4));
                _tables[name] = font.Slice((int)start, (int)length);
            }
        }
    }

    public ReadOnlyMemory<byte> Table(string name) => _tables.GetValueOrDefault(name);

    public static ushort UInt16(ReadOnlyMemory<byte> table, int offset) =>
        offset >= 0 && offset <= table.Length - 2
            ? BinaryPrimitives.ReadUInt16BigEndian(table.Span[offset..])
            : (ushort)0;

    public static short Int16(ReadOnlyMemory<byte> table, int offset) =>
        unchecked((short)UInt16(table, offset));

    public static uint UInt32(ReadOnlyMemory<byte> table, int offset) =>
        offset >= 0 && offset <= table.Length - 4
            ? BinaryPrimitives.ReadUInt32BigEndian(table.Span[offset..])
            : 0;
}
