using System.Text;

namespace StabilityStudy.Files.Starting;

/// <summary>The places of a ready protocol that its comments mark to be changed.</summary>
public static class MarkedPlaces
{
    private static readonly byte[] Mark = Encoding.UTF8.GetBytes("CHANGE:");

    /// <summary>The lines with such a mark, counted from 1.</summary>
    /// <param name="protocol">Bytes of protocol.toml.</param>
    public static ImmutableArray<int> Lines(ReadOnlySpan<byte> protocol)
    {
        var lines = ImmutableArray.CreateBuilder<int>();
        var number = 0;
        foreach (var line in protocol.Split((byte)'\n'))
        {
            number++;
            if (protocol[line].IndexOf(Mark) >= 0)
            {
                lines.Add(number);
            }
        }

        return lines.ToImmutable();
    }
}
