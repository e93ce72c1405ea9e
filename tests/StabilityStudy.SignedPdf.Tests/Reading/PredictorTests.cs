using StabilityStudy.SignedPdf.Compression;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

public static class PredictorTests
{
    // Worked by hand from RFC 2083, section 6: rows of three one-byte pixels 10 20 30 / 11 22 33.
    [Theory]
    [InlineData("00 0A141E 00 0B1621")]
    [InlineData("01 0A0A0A 01 0B0B0B")]
    [InlineData("02 0A141E 02 010203")]
    [InlineData("03 0A0F14 03 060707")]
    [InlineData("04 0A0A0A 04 010203")]
    public static void Each_row_filter_is_undone(string rows)
    {
        var decoded = StreamDecoder.Decode(Stream(rows, 12, 3), 1000);

        Assert.Equal(Convert.FromHexString("0A141E0B1621"), Rewritten.Value(decoded).ToArray());
    }

    [Theory]
    [InlineData("00 0A141E 00", 12, 3)]
    [InlineData("05 0A141E", 12, 3)]
    [InlineData("00 0A141E", 2, 3)]
    [InlineData("00 0A141E", 12, 0)]
    [InlineData("00 0A141E", 12, -3)]
    [InlineData("00 0A141E", 12, 2000000000)]
    [InlineData("00 0A141E", 12, long.MaxValue)]
    public static void Wrong_rows_and_parameters_are_a_failure(
        string rows,
        long predictor,
        long columns
    ) =>
        Assert.False(
            StreamDecoder.Decode(Stream(rows, predictor, columns), 1000).TryGet(out _, out _)
        );

    private static PdfStream Stream(string rows, long predictor, long columns) =>
        new(
            PdfDictionary.Of(
                new("Filter", new PdfArray([new PdfName("FlateDecode")])),
                new(
                    "DecodeParms",
                    PdfDictionary.Of(
                        new("Predictor", new PdfInteger(predictor)),
                        new("Columns", new PdfInteger(columns))
                    )
                )
            ),
            ZlibEncoder.Encode(
                Convert.FromHexString(rows.Replace(" ", "", StringComparison.Ordinal))
            )
        );
}
