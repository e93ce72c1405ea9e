using PdfSharp.Drawing;
using StabilityStudy.Reporting.Charts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Collects the charts while the pages are laid out and hands them out as images while they are drawn.</summary>
internal sealed class FigureBook : IDisposable
{
    private readonly ImmutableArray<SizedChart>.Builder _charts =
        ImmutableArray.CreateBuilder<SizedChart>();

    private MemoryStream? _book;
    private XPdfForm? _form;

    /// <summary>Adds a chart and returns its place in the book.</summary>
    public int Add(SizedChart chart)
    {
        _charts.Add(chart);
        return _charts.Count - 1;
    }

    /// <summary>The chart as an image; the book is drawn when the first one is asked for.</summary>
    public XPdfForm Image(int index)
    {
        if (_form is null)
        {
            _book = new MemoryStream(ChartBook.Draw(_charts.ToImmutable()));
            _form = XPdfForm.FromStream(_book);
        }

        _form.PageNumber = index + 1;
        return _form;
    }

    public void Dispose()
    {
        _form?.Dispose();
        _book?.Dispose();
    }
}
