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

    private readonly Dictionary<int, SignatureRectangle> _decisions = [];

    /// <summary>Adds the place of the decision on a row, given from the upper left corner of the current page.</summary>
    public void AddDecision(int row, XRect place, PageCanvas canvas)
    {
        var area = canvas.Frame.FromBelow(place);
        _decisions[row] = new SignatureRectangle(
            "",
            canvas.PageNumber,
            area.X,
            area.Y,
            area.Width,
            area.Height
        );
    }

    /// <summary>The places of the decisions in the order of the rows on which somebody signs.</summary>
    public ImmutableArray<SignatureRectangle> Decisions() =>
        [.. _decisions.OrderBy(item => item.Key).Select(item => item.Value)];

    public ImmutableArray<SignatureRectangle> All() => _places.ToImmutable();
}
