namespace StabilityStudy.SignedPdf.Compression;

/// <summary>The checksum at the end of a zlib stream (RFC 1950, section 8.2).</summary>
internal static class Adler32
{
    private const uint Modulus = 65521;

    // The longest run after which the sums still fit 32 bits without a division.
    private const int LongestRun = 5552;

    public static uint Compute(ReadOnlySpan<byte> bytes)
    {
        uint low = 1;
        uint high = 0;
        while (bytes.Length > 0)
        {
            var run = bytes[..Math.Min(bytes.Length, LongestRun)];
            foreach (var value in run)
            {
                low += value;
                high += low;
            }

            low %= Modulus;
            high %= Modulus;
            bytes = bytes[run.Length..];
        }

        return (high << 16) | low;
    }
}
