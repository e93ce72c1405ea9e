using System.Buffers;
using System.Text;

namespace StabilityStudy.SignedPdf.Writing;

/// <summary>Writes objects in one fixed form (ISO 32000-1:2008, 7.3): the same object always gives the same bytes.</summary>
internal static class PdfWriter
{
    /// <summary>Writes an object; arrays and dictionaries in it are written in place, references as references.</summary>
    public static void Write(IBufferWriter<byte> output, PdfObject value)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(value);
        switch (value)
        {
            case PdfNull:
                output.Write("null"u8);
                break;
            case PdfBoolean boolean:
                output.Write(boolean.Value ? "true"u8 : "false"u8);
                break;
            case PdfInteger integer:
                WriteInteger(output, integer.Value);
                break;
            case PdfReal real:
                output.Write(Encoding.ASCII.GetBytes(real.Text));
                break;
            case PdfString text:
                WriteString(output, text.Bytes.AsSpan());
                break;
            case PdfName name:
                WriteName(output, name.Value);
                break;
            case PdfArray array:
                WriteArray(output, array);
                break;
            case PdfDictionary dictionary:
                WriteDictionary(output, dictionary);
                break;
            case PdfReference reference:
                WriteInteger(output, reference.Number);
                output.Write(" "u8);
                WriteInteger(output, reference.Generation);
                output.Write(" R"u8);
                break;
            case PdfStream stream:
                WriteDictionary(
                    output,
                    stream.Dictionary.With("Length", new PdfInteger(stream.Encoded.Length))
                );
                output.Write("\nstream\n"u8);
                output.Write(stream.Encoded.Span);
                output.Write("\nendstream"u8);
                break;
            default:
                throw new ArgumentException("A kind of object that is not known.", nameof(value));
        }
    }

    /// <summary>Writes an object with its number, ready to be referred to.</summary>
    public static void WriteIndirect(IBufferWriter<byte> output, PdfIndirectObject value)
    {
        ArgumentNullException.ThrowIfNull(value);
        WriteInteger(output, value.Reference.Number);
        output.Write(" "u8);
        WriteInteger(output, value.Reference.Generation);
        output.Write(" obj\n"u8);
        Write(output, value.Value);
        output.Write("\nendobj\n"u8);
    }

    private static void WriteInteger(IBufferWriter<byte> output, long value)
    {
        var span = output.GetSpan(20);
        value.TryFormat(span, out var written, provider: CultureInfo.InvariantCulture);
        output.Advance(written);
    }

    private static void WriteArray(IBufferWriter<byte> output, PdfArray array)
    {
        output.Write("["u8);
        for (var i = 0; i < array.Items.Length; i++)
        {
            if (i > 0)
            {
                output.Write(" "u8);
            }

            Write(output, array.Items[i]);
        }

        output.Write("]"u8);
    }

    private static void WriteDictionary(IBufferWriter<byte> output, PdfDictionary dictionary)
    {
        output.Write("<<"u8);
        foreach (var entry in dictionary.Entries)
        {
            WriteName(output, entry.Name);
            output.Write(" "u8);
            Write(output, entry.Value);
        }

        output.Write(">>"u8);
    }

    private static void WriteName(IBufferWriter<byte> output, string name)
    {
        output.Write("/"u8);
        foreach (var character in name)
        {
            if (character is > ' ' and <= '~' and not '#' && PdfCharacter.IsRegular(character))
            {
                output.Write([(byte)character]);
            }
            else
            {
                output.Write("#"u8);
                output.Write(
                    Encoding.ASCII.GetBytes(
                        ((int)character).ToString("X2", CultureInfo.InvariantCulture)
                    )
                );
            }
        }
    }

    // Readable where all bytes are printable, otherwise hexadecimal: no line ends to be changed on the way.
    private static void WriteString(IBufferWriter<byte> output, ReadOnlySpan<byte> bytes)
    {
        if (bytes.ContainsAnyExceptInRange((byte)' ', (byte)'~'))
        {
            output.Write("<"u8);
            output.Write(Encoding.ASCII.GetBytes(Convert.ToHexString(bytes)));
            output.Write(">"u8);
            return;
        }

        output.Write("("u8);
        foreach (var value in bytes)
        {
            if (value is (byte)'(' or (byte)')' or (byte)'\\')
            {
                output.Write("\\"u8);
            }

            output.Write([value]);
        }

        output.Write(")"u8);
    }
}
