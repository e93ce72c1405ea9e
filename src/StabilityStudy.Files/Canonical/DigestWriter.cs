using System.Security.Cryptography;

namespace StabilityStudy.Files.Canonical;

/// <summary>Takes lines for their SHA-256 and keeps none of them.</summary>
internal sealed class DigestWriter : IDisposable
{
    private const int Block = 65_536;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly byte[] _buffer = new byte[Block];
    private int _written;

    /// <summary>Takes a line, which it ends with a line feed.</summary>
    public void WriteLine(ReadOnlySpan<byte> line)
    {
        if (_written + line.Length + 1 > Block)
        {
            Hash();
        }

        if (line.Length + 1 > Block)
        {
            _hash.AppendData(line);
            line = [];
        }

        line.CopyTo(_buffer.AsSpan(_written));
        _written += line.Length;
        _buffer[_written++] = (byte)'\n';
    }

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
