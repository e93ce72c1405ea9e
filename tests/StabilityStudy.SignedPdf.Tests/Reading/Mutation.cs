namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>Damages a file at a few places as transport, editors or attackers would.</summary>
internal static class Mutation
{
    private static readonly byte[] Structural =
        "<>[]()/ \n0123456789Robjstream%xref\0\xFF"u8.ToArray();

    public static byte[] Of(byte[] file, Random random)
    {
        var bytes = new List<byte>(file);
        for (var changes = random.Next(1, 4); changes > 0; changes--)
        {
            var place = random.Next(bytes.Count);
            var length = Math.Min(random.Next(1, 40), bytes.Count - place);
            switch (random.Next(6))
            {
                case 0:
                    bytes[place] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes[place] = Structural[random.Next(Structural.Length)];
                    break;
                case 2:
                    bytes.RemoveRange(place, length);
                    break;
                case 3:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(place, length));
                    break;
                case 4:
                    ChangeDigit(bytes, place, random);
                    break;
                default:
                    bytes.Insert(place, Structural[random.Next(Structural.Length)]);
                    break;
            }
        }

        return [.. bytes];
    }

    // Numbers steer the reader: offsets, lengths, counts, references.
    private static void ChangeDigit(List<byte> bytes, int from, Random random)
    {
        var place = bytes.FindIndex(from, static value => value is >= (byte)'0' and <= (byte)'9');
        if (place >= 0)
        {
            bytes[place] = (byte)('0' + random.Next(10));
        }
    }
}
