using System.Buffers;
using System.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Passes JSON in UTF-8 on to the screen, some lines at a time.</summary>
/// <param name="screen">The screen.</param>
internal sealed class JsonScreen(ScreenWriter screen) : IBufferWriter<byte>
{
    // As a text a piece of this size is still no large object to the collector.
    private const int Piece = 1 << 15;

    private byte[] _bytes = new byte[2 * Piece];
    private int _used;

    public void Advance(int count)
    {
        _used += count;
        if (_used >= Piece && Written.LastIndexOf((byte)'\n') is >= 0 and var end)
        {
            Pass(end + 1);
        }
    }

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        if (_bytes.Length - _used < Math.Max(sizeHint, 1))
        {
            Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, _used + sizeHint));
        }

        return _bytes.AsMemory(_used);
    }

    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    /// <summary>Passes on what is left.</summary>
    public void Finish() => Pass(_used);

    private ReadOnlySpan<byte> Written => _bytes.AsSpan(0, _used);

    private void Pass(int count)
    {
        screen.WriteJson(Encoding.UTF8.GetString(Written[..count]));
        Written[count..].CopyTo(_bytes);
        _used -= count;
    }
}
