using System.Buffers;
using System.Security.Cryptography;

namespace StabilityStudy.Files.Canonical;

/// <summary>Joins the lines of a canonical file in their order, and hashes them on the way. Portions may come from several threads.</summary>
internal sealed class CanonicalText : IDisposable
{
    private readonly ArrayBufferWriter<byte> _bytes;
    private readonly IncrementalHash _text = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly IncrementalHash _data = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly object _turn = new();
    private int _next;

    /// <summary>Begins a file.</summary>
    /// <param name="header">Its header line.</param>
    /// <param name="length">About how many bytes its rows will have.</param>
    public CanonicalText(CanonicalLines header, int length)
    {
        _bytes = new(header.Text.Length + length);
        Add(header);
    }

    /// <summary>Adds a portion of the rows, once those before it are there.</summary>
    /// <param name="lines">The lines of the portion.</param>
    /// <param name="number">Its number, from 0.</param>
    public void Add(CanonicalLines lines, int number)
    {
        lock (_turn)
        {
            while (_next < number)
            {
                Monitor.Wait(_turn);
            }

            Add(lines);
            _next++;
            Monitor.PulseAll(_turn);
        }
    }

    /// <summary>The file as a whole.</summary>
    public CanonicalCsv ToCsv() => new(_bytes.WrittenMemory, Sha256(_text), Sha256(_data));

    public void Dispose()
    {
        _text.Dispose();
        _data.Dispose();
    }

    private void Add(CanonicalLines lines)
    {
        _bytes.Write(lines.Text);
        _text.AppendData(lines.Text);
        _data.AppendData(lines.Data);
    }

    private static string Sha256(IncrementalHash hash) =>
        Convert.ToHexStringLower(hash.GetHashAndReset());
}
