namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Undoes the row filters that precede compression in cross-reference streams (ISO 32000-1:2008, 7.4.4.4; RFC 2083, section 6).</summary>
internal static class PngPredictor
{
    /// <summary>The bytes without filter tags; null when a row is incomplete or its filter is unknown.</summary>
    /// <param name="data">Rows, each a filter tag and <paramref name="rowLength"/> bytes.</param>
    /// <param name="rowLength">Bytes a row, at least 1.</param>
    /// <param name="pixelLength">Bytes a pixel, at least 1.</param>
    public static byte[]? Undo(ReadOnlySpan<byte> data, int rowLength, int pixelLength)
    {
        if (data.Length % (rowLength + 1L) != 0)
        {
            return null;
        }

        var rows = data.Length / (rowLength + 1);
        var output = new byte[rows * rowLength];
        ReadOnlySpan<byte> above = new byte[rowLength];
        for (var row = 0; row < rows; row++)
        {
            var source = data.Slice(row * (rowLength + 1), rowLength + 1);
            var target = output.AsSpan(row * rowLength, rowLength);
            if (source[0] > 4)
            {
                return null;
            }

            for (var i = 0; i < rowLength; i++)
            {
                var left = i < pixelLength ? 0 : target[i - pixelLength];
                var corner = i < pixelLength ? 0 : above[i - pixelLength];
                var predicted = source[0] switch
                {
                    0 => 0,
                    1 => left,
                    2 => above[i],
                    3 => (left + above[i]) / 2,
                    _ => Paeth(left, above[i], corner),
                };
                target[i] = (byte)((source[i + 1] + predicted) & 0xFF);
            }

            above = target;
        }

        return output;
    }

    private static int Paeth(int left, int above, int corner)
    {
        var estimate = left + above - corner;
        var (toLeft, toAbove, toCorner) = (
            Math.Abs(estimate - left),
            Math.Abs(estimate - above),
            Math.Abs(estimate - corner)
        );
        return toLeft <= toAbove && toLeft <= toCorner ? left
            : toAbove <= toCorner ? above
            : corner;
    }
}
