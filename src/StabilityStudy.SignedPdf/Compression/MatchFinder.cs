using System.Buffers.Binary;
using System.Numerics;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Finds earlier occurrences of the bytes at a place within the window: chains of positions whose next three bytes hash alike.
/// </summary>
internal sealed class MatchFinder
{
    private const int HashBits = 15;

    // How many candidates are tried, and from which length on fewer are: the usual middle between speed and size.
    private const int LongestChain = 128;
    private const int GoodMatch = 8;
    private const int NiceMatch = 128;

    private readonly int[] _newest = new int[1 << HashBits];
    private readonly int[] _earlier;
    private readonly int _windowMask;

    /// <param name="dataLength">Length of the data; short data need no whole window.</param>
    public MatchFinder(int dataLength)
    {
        var length = Math.Clamp(dataLength, 1, DeflateAlphabet.WindowLength);
        _earlier = new int[(int)BitOperations.RoundUpToPowerOf2((uint)length)];
        _windowMask = _earlier.Length - 1;
        Array.Fill(_newest, -1);
    }

    /// <summary>Makes the position findable; positions must be given in order.</summary>
    public void Insert(ReadOnlySpan<byte> data, int position)
    {
        if (position + DeflateAlphabet.ShortestMatch > data.Length)
        {
            return;
        }

        var hash = Hash(data, position);
        _earlier[position & _windowMask] = _newest[hash];
        _newest[hash] = position;
    }

    /// <summary>The longest match for the bytes at a position not yet inserted, if longer than <paramref name="atLeast"/>; otherwise length 0.</summary>
    public (int Length, int Distance) Find(ReadOnlySpan<byte> data, int position, int atLeast)
    {
        var limit = Math.Min(DeflateAlphabet.LongestMatch, data.Length - position);
        var best = (Length: 0, Distance: 0);
        var longest = Math.Max(atLeast, DeflateAlphabet.ShortestMatch - 1);
        if (limit <= longest)
        {
            return best;
        }

        var current = data.Slice(position, limit);
        var ending = BinaryPrimitives.ReadUInt16LittleEndian(current[(longest - 1)..]);
        var chain = atLeast >= GoodMatch ? LongestChain / 4 : LongestChain;
        var candidate = _newest[Hash(data, position)];
        while (
            candidate >= 0 && position - candidate <= DeflateAlphabet.WindowLength && chain-- > 0
        )
        {
            // Only a candidate that agrees in its last two bytes can be longer.
            if (
                BinaryPrimitives.ReadUInt16LittleEndian(data[(candidate + longest - 1)..]) == ending
            )
            {
                var length = current.CommonPrefixLength(data.Slice(candidate, limit));
                if (length > longest)
                {
                    longest = length;
                    best = (length, position - candidate);
                    if (length >= NiceMatch || length == limit)
                    {
                        break;
                    }

                    ending = BinaryPrimitives.ReadUInt16LittleEndian(current[(longest - 1)..]);
                }
            }

            var next = _earlier[candidate & _windowMask];
            if (next >= candidate)
            {
                break;
            }

            candidate = next;
        }

        return best;
    }

    private static int Hash(ReadOnlySpan<byte> data, int position)
    {
        var three =
            data[position] | ((uint)data[position + 1] << 8) | ((uint)data[position + 2] << 16);
        return (int)(unchecked(three * 2654435761u) >> (32 - HashBits));
    }
}
