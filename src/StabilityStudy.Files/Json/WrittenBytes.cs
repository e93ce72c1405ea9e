using System.Buffers;

namespace StabilityStudy.Files.Json;

/// <summary>
/// Takes what is written in pieces that are never moved, so that a large document stands in memory once while it grows and
/// twice while it is joined.
/// </summary>
internal sealed class WrittenBytes : IBufferWriter<byte>
{
    private const int Piece = 1 << 16;

    private readonly List<ReadOnlyMemory<byte>> _full = [];
    private byte[] _last = [];
    private int _used;

    public void Advance(int count) => _used += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        if (_last.Length - _used < Math.Max(sizeHint, 1))
        {
            _full.Add(_last.AsMemory(0, _used));
            _last = new byte[Math.Max(sizeHint, Piece)];
            _used = 0;
        }

        return _last.AsMemory(_used);
    }

    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    /// <summary>All that was written.</summary>
    public byte[] ToArray()
    {
        var all = new byte[_full.Sum(piece => piece.Length) + _used];
        var at = 0;
        foreach (var piece in _full.Append(_last.AsMemory(0, _used)))
        {
            piece.CopyTo(all.AsMemory(at));
            at += piece.Length;
        }

        return all;
    }
}
