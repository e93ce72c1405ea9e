using System.Collections.Immutable;
using System.Numerics;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>The symbols for match lengths and distances (RFC 1951, section 3.2.5).</summary>
internal static class DeflateAlphabet
{
    public const int LiteralCount = 286;
    public const int DistanceCount = 30;
    public const int EndOfBlock = 256;
    public const int ShortestMatch = 3;
    public const int LongestMatch = 258;
    public const int WindowLength = 32768;

    /// <summary>The order in which the lengths of the code for code lengths are written (section 3.2.7).</summary>
    public static ImmutableArray<byte> CodeLengthOrder { get; } =
    [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];

    /// <summary>Symbol, number of extra bits and their value for a match length of 3 to 258.</summary>
    public static (int Symbol, int ExtraBits, uint Extra) OfLength(int length)
    {
        if (length == LongestMatch)
        {
            return (285, 0, 0);
        }

        var offset = length - ShortestMatch;
        if (offset < 8)
        {
            return (257 + offset, 0, 0);
        }

        // Four symbols for each power of two.
        var extraBits = BitOperations.Log2((uint)offset) - 2;
        return (
            257 + (4 * extraBits) + (offset >> extraBits),
            extraBits,
            (uint)offset & ((1u << extraBits) - 1)
        );
    }

    /// <summary>Symbol, number of extra bits and their value for a distance of 1 to 32768.</summary>
    public static (int Symbol, int ExtraBits, uint Extra) OfDistance(int distance)
    {
        var offset = distance - 1;
        if (offset < 4)
        {
            return (offset, 0, 0);
        }

        // Two symbols for each power of two.
        var extraBits = BitOperations.Log2((uint)offset) - 1;
        return (
            (2 * extraBits) + (offset >> extraBits),
            extraBits,
            (uint)offset & ((1u << extraBits) - 1)
        );
    }

    /// <summary>Shortest length and number of extra bits of a length symbol; null when it is none.</summary>
    public static (int Shortest, int ExtraBits)? LengthOf(int symbol)
    {
        if (symbol == 285)
        {
            return (LongestMatch, 0);
        }

        if (symbol is < 257 or > 285)
        {
            return null;
        }

        var extraBits = Math.Max(0, ((symbol - 257) / 4) - 1);
        return (ShortestMatch + ((symbol - 257 - (4 * extraBits)) << extraBits), extraBits);
    }

    /// <summary>Shortest distance and number of extra bits of a distance symbol; null when it is none.</summary>
    public static (int Shortest, int ExtraBits)? DistanceOf(int symbol)
    {
        if (symbol is < 0 or >= DistanceCount)
        {
            return null;
        }

        var extraBits = Math.Max(0, (symbol / 2) - 1);
        return (1 + ((symbol - (2 * extraBits)) << extraBits), extraBits);
    }
}
