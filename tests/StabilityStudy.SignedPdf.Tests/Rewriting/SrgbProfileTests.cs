using System.Buffers.Binary;
using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

/// <summary>
/// The color profile against the format (ICC.1:2001-04, clauses 6.1 and 6.2) and against IEC 61966-2-1; values from memory
/// unless they follow from another.
/// </summary>
public static class SrgbProfileTests
{
    private static readonly byte[] s_profile = Profile();

    [Fact]
    public static void Its_header_gives_its_length_version_class_spaces_date_and_signature()
    {
        Assert.Equal(s_profile.Length, Number(0));
        Assert.Equal(0x02100000, Number(8));
        Assert.Equal("mntrRGB XYZ ", Text(12, 12));
        Assert.Equal([7, 207, 0, 10, 0, 1, 0, 0, 0, 0, 0, 0], s_profile[24..36]);
        Assert.Equal("acsp", Text(36, 4));
        // The illuminant is D50, and so is the white.
        Assert.Equal([0xF6D6, 0x10000, 0xD32D], new[] { Number(68), Number(72), Number(76) });
        Assert.Equal(s_profile[68..80], s_profile[(Tag("wtpt") + 8)..(Tag("wtpt") + 20)]);
    }

    [Fact]
    public static void Every_tag_lies_within_the_file_on_a_multiple_of_four()
    {
        Assert.Equal(9, Number(128));
        Assert.All(
            Enumerable.Range(0, 9).Select(tag => 132 + (12 * tag)),
            entry =>
            {
                Assert.Equal(0, Number(entry + 4) % 4);
                Assert.InRange(Number(entry + 4) + Number(entry + 8), 132 + 108, s_profile.Length);
            }
        );
    }

    [Fact]
    public static void Red_green_and_blue_together_are_white()
    {
        for (var axis = 0; axis < 3; axis++)
        {
            var at = 8 + (4 * axis);
            Assert.InRange(
                Number(Tag("rXYZ") + at) + Number(Tag("gXYZ") + at) + Number(Tag("bXYZ") + at),
                Number(Tag("wtpt") + at) - 32,
                Number(Tag("wtpt") + at) + 32
            );
        }
    }

    [Fact]
    public static void The_curve_is_that_of_the_standard()
    {
        var curve = Tag("rTRC");
        Assert.Equal(1024, Number(curve + 8));
        Assert.Equal(curve, Tag("gTRC"));
        Assert.Equal(curve, Tag("bTRC"));
        Assert.All(
            Enumerable.Range(0, 1024),
            i =>
            {
                var value = i / 1023.0;
                var light =
                    65535
                    * (value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4));
                Assert.Equal(
                    Math.Round(light),
                    BinaryPrimitives.ReadUInt16BigEndian(s_profile.AsSpan(curve + 12 + (2 * i)))
                );
            }
        );
    }

    private static int Tag(string name) =>
        Number(
            Enumerable
                .Range(0, 9)
                .Select(tag => 132 + (12 * tag))
                .Single(entry => Text(entry, 4) == name) + 4
        );

    private static byte[] Profile()
    {
        var document = Rewritten.Read(
            Rewritten.Of(
                HandMadePdf.Of("<</Type/Catalog>>"),
                new RewriteOptions("Title", null, "tool", null, null, [])
            )
        );
        var intents = Assert.IsType<PdfArray>(
            document.Resolve(document.Catalog.Find("OutputIntents"))
        );
        var intent = Assert.IsType<PdfDictionary>(document.Resolve(Assert.Single(intents.Items)));
        var profile = Assert.IsType<PdfStream>(document.Resolve(intent.Find("DestOutputProfile")));
        Assert.True(StreamDecoder.Decode(profile, 1 << 20).TryGet(out var bytes, out _));
        return bytes.ToArray();
    }

    private static int Number(int at) => BinaryPrimitives.ReadInt32BigEndian(s_profile.AsSpan(at));

    private static string Text(int at, int length) =>
        Encoding.ASCII.GetString(s_profile, at, length);
}
