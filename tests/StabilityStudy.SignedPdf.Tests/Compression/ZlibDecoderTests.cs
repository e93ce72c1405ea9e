using System.IO.Compression;
using CsCheck;
using StabilityStudy.SignedPdf.Compression;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Compression;

public static class ZlibDecoderTests
{
    [Fact]
    public static void A_missing_checksum_is_tolerated()
    {
        var encoded = ZlibEncoder.Encode("without a checksum"u8.ToArray());

        Assert.Equal(
            "without a checksum"u8.ToArray(),
            Rewritten.Value(ZlibDecoder.Decode(encoded.AsMemory()[..^4], 100)).ToArray()
        );
    }

    [Fact]
    public static void Growth_beyond_the_bound_is_a_failure()
    {
        var encoded = ZlibEncoder.Encode(new byte[1_000_000]);

        Assert.True(encoded.Length < 2000);
        Assert.False(ZlibDecoder.Decode(encoded, 999_999).TryGet(out _, out var failure));
        Assert.Contains("bound", failure.What, StringComparison.Ordinal);
        Assert.True(ZlibDecoder.Decode(encoded, 1_000_000).TryGet(out _, out _));
    }

    [Theory]
    [InlineData("")]
    [InlineData("78")]
    [InlineData("789D")]
    [InlineData("7920")]
    [InlineData("78BB00000000")]
    [InlineData("789CFFFFFFFF")]
    [InlineData("789C0500")]
    // A preset dictionary, with and without its number.
    [InlineData("78BB0300")]
    [InlineData("78BB000000000300")]
    // A match that begins before the first byte, with the checksum of the zeros that some decoders make of it.
    [InlineData("789C03020000030001")]
    public static void Damaged_bytes_are_a_failure(string hexadecimal) =>
        Assert.False(
            ZlibDecoder.Decode(Convert.FromHexString(hexadecimal), 100).TryGet(out _, out _)
        );

    [Fact]
    public static void Bytes_after_the_checksum_are_not_looked_at()
    {
        byte[] encoded = [.. ZlibEncoder.Encode("followed"u8.ToArray()), 1, 2, 3];

        Assert.Equal(
            "followed"u8.ToArray(),
            Rewritten.Value(ZlibDecoder.Decode(encoded, 8)).ToArray()
        );
    }

    [Fact]
    public static void A_stream_cut_off_is_a_failure()
    {
        var encoded = ZlibEncoder.Encode(ZlibEncoderTests.Sample("text"));

        Assert.False(
            ZlibDecoder
                .Decode(encoded.AsMemory(0, encoded.Length / 2), 10_000_000)
                .TryGet(out _, out _)
        );
    }

    [Fact]
    public static void No_cut_gives_a_shorter_answer()
    {
        var data = "Every byte of an attached file counts, counts, counts."u8.ToArray();
        var encoded = ZlibEncoder.Encode(data);
        for (var length = 0; length < encoded.Length; length++)
        {
            var isRead = ZlibDecoder
                .Decode(encoded.AsMemory(0, length), 1000)
                .TryGet(out var decoded, out _);
            Assert.Equal(length >= encoded.Length - 4, isRead);
            Assert.True(!isRead || decoded.Span.SequenceEqual(data));
        }
    }

    [Fact]
    public static void A_wrong_checksum_is_a_failure()
    {
        var encoded = ZlibEncoder.Encode(ZlibEncoderTests.Sample("font"));
        encoded[^1] ^= 1;

        Assert.False(ZlibDecoder.Decode(encoded, 1_000_000).TryGet(out _, out var failure));
        Assert.Contains("checksum", failure.What, StringComparison.Ordinal);
    }

    [Fact]
    public static void Any_bytes_after_the_header_are_taken_as_the_common_decoder_takes_them() =>
        Gen
            .Byte.Array[0, 200]
            .Sample(
                static tail =>
                {
                    if (
                        ZlibDecoder
                            .Decode((byte[])[0x78, 0x9C, .. tail], 100_000)
                            .TryGet(out var decoded, out _)
                    )
                    {
                        using var inflate = new DeflateStream(
                            new MemoryStream(tail),
                            CompressionMode.Decompress
                        );
                        using var common = new MemoryStream();
                        inflate.CopyTo(common);
                        Assert.Equal(common.ToArray(), decoded.ToArray());
                    }
                },
                iter: 5000,
                seed: "0N0XIzNsQ0O2"
            );
}
