using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using CsCheck;
using StabilityStudy.SignedPdf.Compression;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Compression;

public static class ZlibEncoderTests
{
    [Fact]
    public static void Random_bytes_come_back() =>
        Gen
            .Byte.Array[0, 3000]
            .Sample(static data => AssertComesBack(data), iter: 300, seed: "0N0XIzNsQ0O2");

    [Fact]
    public static void Bytes_of_few_kinds_come_back() =>
        Gen.Byte[0, 3]
            .Array[0, 5000]
            .Sample(static data => AssertComesBack(data), iter: 300, seed: "0N0XIzNsQ0O2");

    [Fact]
    public static void Repeated_pieces_come_back() =>
        Gen.Select(Gen.Byte.Array[1, 400], Gen.Int[1, 200], Gen.Byte.Array[0, 50])
            .Sample(
                static (piece, times, rest) =>
                    AssertComesBack([
                        .. Enumerable.Repeat(piece, times).SelectMany(static part => part),
                        .. rest,
                    ]),
                iter: 200,
                seed: "0N0XIzNsQ0O2"
            );

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(257)]
    [InlineData(258)]
    [InlineData(259)]
    [InlineData(32767)]
    [InlineData(32768)]
    [InlineData(32769)]
    [InlineData(65535)]
    [InlineData(65536)]
    [InlineData(200000)]
    public static void Random_and_constant_data_of_edge_lengths_come_back(int length)
    {
        var random = new byte[length];
        new Random(length).NextBytes(random);

        AssertComesBack(random);
        AssertComesBack(new byte[length]);
        AssertComesBack([.. random, .. random]);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("table")]
    [InlineData("font")]
    public static void Size_is_within_a_twentieth_of_the_common_encoder(string kind)
    {
        var data = Sample(kind);
        using var common = new MemoryStream();
        using (var zlib = new ZLibStream(common, CompressionLevel.Optimal, leaveOpen: true))
        {
            zlib.Write(data);
        }

        Assert.InRange(ZlibEncoder.Encode(data).Length, 1, common.Length * 1.05);
    }

    // Golden: the same on every machine is the purpose of the encoder. A change of the encoder changes these.
    [Theory]
    [InlineData("text", "B64027007007B07CD30607F5019F6108CBB0CFF83BBC0EC3B2")]
    [InlineData("table", "FA3C8D4008FB840A87374BD37C109BC993D8F6BEDF362DA493")]
    [InlineData("font", "A5D56892AC3F3639E83CC93BEBEDFEFB3E478CA4FE92EF7BC0")]
    public static void Bytes_are_the_same_on_every_machine(string kind, string hash) =>
        Assert.Equal(
            hash,
            Convert.ToHexString(SHA256.HashData(ZlibEncoder.Encode(Sample(kind))))[..50]
        );

    internal static byte[] Sample(string kind)
    {
        var random = new Random(11);
        return kind switch
        {
            "font" => TestData.Read("sample-font.ttf"),
            "table" => Encoding.ASCII.GetBytes(
                string.Concat(
                    Enumerable
                        .Range(0, 5000)
                        .Select(row => $"S{row:D4},{random.Next(200, 1800)},{random.Next(2)}\n")
                )
            ),
            _ => Encoding.ASCII.GetBytes(
                string.Concat(
                    Enumerable
                        .Range(0, 8000)
                        .Select(_ =>
                            $"BT /F{random.Next(3)} {random.Next(5, 14)} Tf {random.Next(600)} {random.Next(800)} Td ({random.Next(99)}) Tj ET\n"
                        )
                )
            ),
        };
    }

    private static void AssertComesBack(byte[] data)
    {
        var encoded = ZlibEncoder.Encode(data);

        // The common decoder also checks the checksum at the end.
        using var inflate = new ZLibStream(new MemoryStream(encoded), CompressionMode.Decompress);
        using var decoded = new MemoryStream();
        inflate.CopyTo(decoded);
        Assert.Equal(data, decoded.ToArray());
        Assert.Equal(data, Rewritten.Value(ZlibDecoder.Decode(encoded, data.Length)).ToArray());
        Assert.True(encoded.Length <= data.Length + 64 + (data.Length / 1000));
    }
}
