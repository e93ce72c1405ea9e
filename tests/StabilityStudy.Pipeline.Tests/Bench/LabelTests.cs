using System.Globalization;
using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Model;
using UglyToad.PdfPig;
using ZXing;
using ZXing.Common;
using ZXing.Datamatrix;

namespace StabilityStudy.Pipeline.Tests.Bench;

/// <summary>Labels as they leave the printer: the symbols are decoded from a picture of the page at 300 dots an inch.</summary>
[Trait("lane", "slow")]
public sealed class LabelTests
{
    private const int DotsPerInch = 300;
    private const double DotsPerMillimeter = DotsPerInch / 25.4;
    private const double PointsPerMillimeter = 72 / 25.4;

    [Theory]
    [InlineData("aptt-room-temperature", PaperSize.A4)]
    [InlineData("routine-room-temperature", PaperSize.Letter)]
    [InlineData("frozen-plasma-70", PaperSize.A4)]
    [InlineData("add-on-spun-tube", PaperSize.A4)]
    public async Task Every_symbol_of_a_sheet_says_study_and_tube(string name, PaperSize paper)
    {
        var (codes, found) = await Decoded(
            name,
            BenchStudies.Request(paper, BenchPageKind.Labels),
            LabelStock.Usual(paper)
        );

        Assert.NotEmpty(codes);
        Assert.Equal(codes, found);
    }

    [Fact]
    public async Task A_sheet_given_by_its_measures_begins_at_the_first_free_label()
    {
        var stock = new LabelStock(3, 7, 60, 36, 12, 20, 3, 1.5, FirstLabel: 5);

        var (codes, found) = await Decoded(
            "aptt-room-temperature",
            BenchStudies.Request(PaperSize.A4, BenchPageKind.Labels) with
            {
                Labels = stock,
            },
            stock
        );

        Assert.Equal(codes, found);
    }

    [Theory]
    [InlineData(45, 21)]
    [InlineData(38, 21)]
    [InlineData(60, 30)]
    public async Task Single_labels_are_a_page_each(double width, double height)
    {
        var stock = LabelStock.OneByOne(width, height);

        var (codes, found) = await Decoded(
            "aptt-room-temperature",
            BenchStudies.Request(PaperSize.A4, BenchPageKind.Labels) with
            {
                Labels = stock,
            },
            stock
        );

        Assert.Equal(codes, found);
    }

    [Theory]
    [InlineData(30, 21, "wide")]
    [InlineData(45, 14, "high")]
    public void A_label_too_small_for_its_code_and_symbol_is_refused(
        double width,
        double height,
        string says
    )
    {
        var answer = BenchPages.Of(
            BenchStudies.Of("aptt-room-temperature"),
            BenchStudies.Request(PaperSize.A4, BenchPageKind.Labels) with
            {
                Labels = LabelStock.OneByOne(width, height),
            }
        );

        Assert.Contains(
            says,
            Assert.IsType<BenchPagesAnswer.NotFitting>(answer).Why,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_sheet_larger_than_the_paper_is_refused()
    {
        var stock = LabelStock.Usual(PaperSize.A4);

        Assert.Null(stock.Fault(PaperSize.A4));
        Assert.NotNull((stock with { Left = 30 }).Fault(PaperSize.A4));
        Assert.NotNull((stock with { Top = 60 }).Fault(PaperSize.A4));
        Assert.NotNull((stock with { FirstLabel = 49 }).Fault(PaperSize.A4));
        Assert.NotNull((stock with { Rows = 13 }).Fault(PaperSize.Letter));
    }

    [Theory]
    [InlineData(20)]
    [InlineData(3)]
    public void The_line_that_checks_the_printer_is_100_mm_long(double top)
    {
        var pdf = BenchStudies.Pdf(
            BenchStudies.Of("aptt-room-temperature"),
            BenchStudies.Request(PaperSize.A4, BenchPageKind.Labels) with
            {
                // 12 rows of 24 mm leave no room above or below: then a page of its own comes first.
                Labels = new LabelStock(4, top < 5 ? 12 : 10, 48, 24, 5, top, 2, 0, 1),
            }
        );
        using var document = PdfDocument.Open(pdf);

        var longest = document
            .GetPage(1)
            .Paths.Select(path => path.GetBoundingRectangle())
            .Max(box => box?.Width ?? 0);
        Assert.Equal(100, longest / PointsPerMillimeter, 0.3);
        Assert.Contains("100 mm", document.GetPage(1).Text, StringComparison.Ordinal);
    }

    /// <summary>ISO/IEC 16022:2006, table 7: a square symbol of 18 × 18 modules holds 25 capitals or 36 digits, one of 20 × 20 holds 31 or 44 (from memory).</summary>
    [Theory]
    [InlineData("ABCDEFGHIJKLMNOPQRSTUVWXY", 18)]
    [InlineData("ABCDEFGHIJKLMNOPQRSTUVWXYZ", 20)]
    [InlineData("012345678901234567890123456789012345", 18)]
    [InlineData("01234567890123456789012345678901234567", 20)]
    [InlineData("WB-RT-APTT/N-001-B", 18)]
    public void The_symbol_is_the_smallest_square_one(string text, int size) =>
        Assert.Equal(size, DataMatrixSymbol.Of(text).Size);

    private static async Task<(string[] Codes, string[] Found)> Decoded(
        string name,
        BenchRequest request,
        LabelStock stock
    )
    {
        var ready = BenchStudies.Ready(BenchStudies.Of(name), request);
        var specimens = ready.Parts.OfType<BenchPart.Labels>().Single().Specimens;
        string[] codes =
        [
            .. specimens
                .SelectMany(specimen => specimen.Tubes.Select(tube => tube.Code).Distinct())
                .Concat(specimens.Select(specimen => specimen.Spare?.Code).OfType<string>())
                .Select(code => $"{ready.Study.Protocol.Code}/{code}"),
        ];
        var pages = await Rastered(BenchPages.Render(ready).Pdf);
        string[] found =
        [
            .. codes.Select(
                (_, i) =>
                {
                    var place = stock.FirstLabel - 1 + i;
                    var on = place % stock.PerSheet;
                    return Decode(
                        pages[place / stock.PerSheet],
                        DataMatrixSymbol.Of(codes[i]).Size,
                        stock.Left + (on % stock.Columns * (stock.Width + stock.GapAcross)),
                        stock.Top + (on / stock.Columns * (stock.Height + stock.GapDown))
                    );
                }
            ),
        ];
        return (codes, found);
    }

    /// <summary>Reads the symbol of a label with the white zone around it: 2 mm, and modules of 0.6 mm.</summary>
    private static string Decode(Gray page, int modules, double left, double top)
    {
        var (x, y) = ((int)(left * DotsPerMillimeter), (int)(top * DotsPerMillimeter));
        var side = (int)(((modules * 0.6) + 3.8) * DotsPerMillimeter);
        var (width, height) = (side, Math.Min(side, page.Height - y));
        var part = new byte[width * height];
        for (var row = 0; row < height; row++)
        {
            Array.Copy(page.Dots, ((y + row) * page.Width) + x, part, row * width, width);
        }

        var source = new RGBLuminanceSource(
            part,
            width,
            height,
            RGBLuminanceSource.BitmapFormat.Gray8
        );

        // The library looks for a symbol by its white surroundings, which misses a rare one; such a one it reads by its lower left corner.
        return Read(source, [])
            ?? Read(source, new() { [DecodeHintType.PURE_BARCODE] = true })
            ?? string.Create(CultureInfo.InvariantCulture, $"nothing at {left:0.0}, {top:0.0} mm");
    }

    private static string? Read(LuminanceSource source, Dictionary<DecodeHintType, object> hints) =>
        new DataMatrixReader().decode(new BinaryBitmap(new HybridBinarizer(source)), hints)?.Text;

    private static async Task<Gray[]> Rastered(ReadOnlyMemory<byte> pdf)
    {
        var folder = Directory.CreateTempSubdirectory("labels-");
        try
        {
            var file = Path.Combine(folder.FullName, "labels.pdf");
            await File.WriteAllBytesAsync(file, pdf, TestContext.Current.CancellationToken);
            var answer = await OutsideTool.Run(
                "pdftoppm",
                "-r",
                DotsPerInch.ToString(CultureInfo.InvariantCulture),
                "-gray",
                file,
                Path.Combine(folder.FullName, "page")
            );
            Assert.Equal(0, answer.ExitCode);
            return
            [
                .. Directory
                    .GetFiles(folder.FullName, "*.pgm")
                    .Order(StringComparer.Ordinal)
                    .Select(name => Gray.Of(File.ReadAllBytes(name))),
            ];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>A gray picture as "portable gray map" holds it.</summary>
    private sealed record Gray(int Width, int Height, byte[] Dots)
    {
        public static Gray Of(byte[] file)
        {
            var at = 0;
            Assert.Equal("P5", Word());
            var (width, height) = (Number(), Number());
            Assert.Equal(255, Number());
            return new Gray(width, height, file[at..]);

            int Number() => int.Parse(Word(), CultureInfo.InvariantCulture);

            string Word()
            {
                var from = at;
                while (!char.IsWhiteSpace((char)file[at]))
                {
                    at++;
                }

                return System.Text.Encoding.ASCII.GetString(file, from, at++ - from);
            }
        }
    }
}
