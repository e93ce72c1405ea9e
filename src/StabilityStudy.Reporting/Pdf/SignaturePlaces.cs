using PdfSharp.Drawing;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Collects where the signature boxes came to stand.</summary>
internal sealed class SignaturePlaces
{
    private readonly ImmutableArray<SignatureRectangle>.Builder _places =
        ImmutableArray.CreateBuilder<SignatureRectangle>();

    /// <summary>Adds the inside of a box, given from the upper left corner of the current page.</summary>
    public void Add(string role, XRect inside, PageCanvas canvas)
    {
        var area = canvas.Frame.FromBelow(inside);
        _places.Add(
            new SignatureRectangle(role, canvas.PageNumber, area.X, area.Y, area.Width, area.Height)
        );
    }

    public ImmutableArray<SignatureRectangle> All() => _places.ToImmutable();
}
