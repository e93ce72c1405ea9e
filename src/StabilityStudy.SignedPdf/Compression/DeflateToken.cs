namespace StabilityStudy.SignedPdf.Compression;

/// <summary>A literal byte (distance 0, the byte as value) or a match (its length as value).</summary>
internal readonly record struct DeflateToken(ushort Value, ushort DistanceLessOne, bool IsMatch)
{
    public int Distance => DistanceLessOne + 1;

    public static DeflateToken Literal(byte value) => new(value, 0, false);

    public static DeflateToken Match(int length, int distance) =>
        new((ushort)length, (ushort)(distance - 1), true);
}
