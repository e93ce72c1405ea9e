using System.Buffers;
using System.Security.Cryptography;

namespace StabilityStudy.Files.Canonical;

/// <summary>Takes bytes for their SHA-256 and keeps none of them.</summary>
internal sealed class DigestWriter : IBufferWriter<byte>, IDisposable
{
    private const int Block = 65_536;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private byte[] _buffer = new byte[Block];
    private int _written;

    public void Advance(int count) => _written += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        if (_buffer.Length - _written < Math.Max(sizeHint, 1))
        {
            Hash();
            if (_buffer.Length < sizeHint)
            {
                _buffer = new byte[sizeHint];
            }
        }

        return _buffer.AsMemory(_written);
    }

    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    /// <summary>The digest of everything written, lower-case hexadecimal.</summary>
    public string Sha256()
    {
        Hash();
        return Convert.ToHexStringLower(_hash.GetHashAndReset());
    }

    public void Dispose() => _hash.Dispose();

    private void Hash()
    {
        _hash.AppendData(_buffer, 0, _written);
        _written = 0;
    }
}
