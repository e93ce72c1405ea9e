using PdfSharp.Drawing;
using StabilityStudy.Reporting.Pdf;
using ZXing;
using ZXing.Common;
using ZXing.Datamatrix;
using ZXing.Datamatrix.Encoder;

namespace StabilityStudy.Reporting.Bench;

/// <summary>A Data Matrix symbol (ISO/IEC 16022, error correction ECC 200): which modules are black, without its quiet zone.</summary>
internal sealed class DataMatrixSymbol
{
    private readonly BitMatrix _modules;

    private DataMatrixSymbol(BitMatrix modules) => _modules = modules;

    /// <summary>Modules along a side.</summary>
    public int Size => _modules.Width;

    /// <summary>Whether a module is black.</summary>
    /// <param name="row">Row from above, from 0.</param>
    /// <param name="column">Column from the left, from 0.</param>
    public bool IsBlack(int row, int column) => _modules[column, row];

    /// <summary>The smallest square symbol of a text.</summary>
    /// <param name="text">Characters of ASCII.</param>
    public static DataMatrixSymbol Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && text.All(char.IsAscii)
            ? new(
                new DataMatrixWriter().encode(
                    text,
                    BarcodeFormat.DATA_MATRIX,
                    0,
                    0,
                    new DatamatrixEncodingOptions
                    {
                        SymbolShape = SymbolShapeHint.FORCE_SQUARE,
                        Margin = 0,
                    }.Hints
                )
            )
            : throw new ArgumentException("Not a text of ASCII.", nameof(text));
    }

    /// <summary>Draws the modules, those of a row that touch as one rectangle; the room around them stays white.</summary>
    public void Draw(PageCanvas canvas, XRect area)
    {
        var module = area.Width / Size;
        var path = new XGraphicsPath();
        for (var row = 0; row < Size; row++)
        {
            for (var column = 0; column < Size; )
            {
                var count = 0;
                while (column + count < Size && IsBlack(row, column + count))
                {
                    count++;
                }

                if (count > 0)
                {
                    path.AddRectangle(
                        area.X + (column * module),
                        area.Y + (row * module),
                        count * module,
                        module
                    );
                }

                column += Math.Max(1, count);
            }
        }

        canvas.Fill(path, XColors.Black);
    }
}
