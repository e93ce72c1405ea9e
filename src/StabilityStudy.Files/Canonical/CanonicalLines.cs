using System.Buffers;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>Lines of a canonical file that follow each other.</summary>
internal sealed class CanonicalLines
{
    private readonly CanonicalLine _line = new();
    private readonly ArrayBufferWriter<byte> _text = new();
    private readonly ArrayBufferWriter<byte> _data = new();

    /// <summary>The lines.</summary>
    public ReadOnlySpan<byte> Text => _text.WrittenSpan;

    /// <summary>The same without the column of source rows.</summary>
    public ReadOnlySpan<byte> Data => _data.WrittenSpan;

    /// <summary>Adds the header line.</summary>
    public void AddHeader(ImmutableArray<string> names)
    {
        foreach (var name in names)
        {
            _line.Text(name);
        }

        End(_data);
        _line.Text(CsvColumns.SourceRow.Name);
        End(_text);
        _line.Clear();
    }

    /// <summary>Writes the lines of rows in place of those before.</summary>
    /// <param name="rows">The rows in their order.</param>
    /// <param name="write">Writes the fields of a row.</param>
    /// <param name="sourceRow">The line that a row has in the facility's file.</param>
    public void Write<T>(
        ReadOnlySpan<T> rows,
        Action<T, CanonicalLine> write,
        Func<T, int> sourceRow
    )
    {
        _text.ResetWrittenCount();
        _data.ResetWrittenCount();
        foreach (var row in rows)
        {
            write(row, _line);
            End(_data);
            _line.Whole(sourceRow(row));
            End(_text);
            _line.Clear();
        }
    }

    private void End(ArrayBufferWriter<byte> lines)
    {
        lines.Write(_line.Bytes);
        lines.Write("\n"u8);
    }
}
