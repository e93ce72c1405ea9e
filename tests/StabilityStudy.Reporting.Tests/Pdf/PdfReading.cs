using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Tokens;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>What a structure element is and says.</summary>
internal sealed record StructureElement(
    string Type,
    string? AlternativeText,
    ImmutableArray<StructureElement> Children
)
{
    public IEnumerable<StructureElement> WithDescendants() =>
        Children.SelectMany(c => c.WithDescendants()).Prepend(this);
}

/// <summary>Reads drawn reports back with an independent library.</summary>
internal static class PdfReading
{
    public static string WithoutSpaces(string text) => string.Concat(text.Split(default(char[])));

    /// <summary>What is written on a page, in drawing order without spaces.</summary>
    public static string Text(Page page) =>
        WithoutSpaces(string.Concat(page.Letters.Select(letter => letter.Value)));

    /// <summary>All text in drawing order without spaces, the running texts left out.</summary>
    public static string Body(
        PdfDocument document,
        string runningLeft,
        string runningRight,
        string fingerprint
    ) => Body([.. document.GetPages().Select(Text)], runningLeft, runningRight, fingerprint);

    /// <summary>The same from what is written on each page.</summary>
    public static string Body(
        ImmutableArray<string> pages,
        string runningLeft,
        string runningRight,
        string fingerprint
    )
    {
        var body = new StringBuilder();
        foreach (var (index, text) in pages.Index())
        {
            var running = WithoutSpaces(
                FormattableString.Invariant(
                    $"{runningLeft}{runningRight}{fingerprint}page {index + 1} of {pages.Length}"
                )
            );
            Assert.StartsWith(running, text, StringComparison.Ordinal);
            body.Append(text[running.Length..]);
        }

        return body.ToString();
    }

    /// <summary>Pairs of letters that are drawn over each other.</summary>
    public static IEnumerable<string> Overlaps(Page page)
    {
        var letters = page
            .Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value))
            .Select(l => (Letter: l, Box: Core(l)))
            .OrderBy(l => l.Box.Left)
            .ToArray();
        for (var i = 0; i < letters.Length; i++)
        {
            for (
                var j = i + 1;
                j < letters.Length && letters[j].Box.Left < letters[i].Box.Right;
                j++
            )
            {
                var (a, b) = (letters[i].Box, letters[j].Box);
                if (Math.Min(a.Top, b.Top) > Math.Max(a.Bottom, b.Bottom))
                {
                    yield return FormattableString.Invariant(
                        $"page {page.Number}: {letters[i].Letter.Value} and {letters[j].Letter.Value} at {a.Left:0}, {a.Bottom:0}"
                    );
                }
            }
        }
    }

    public static StructureElement Structure(PdfDocument document)
    {
        var root = Resolve(
            document,
            document.Structure.Catalog.CatalogDictionary.Data["StructTreeRoot"]
        );
        return Element(
            document,
            (DictionaryToken)Resolve(document, ((DictionaryToken)root).Data["K"])
        );
    }

    private static StructureElement Element(PdfDocument document, DictionaryToken element)
    {
        var kids = element.Data.TryGetValue("K", out var k)
            ? Resolve(document, k)
            : new ArrayToken([]);
        var children = (kids as ArrayToken)?.Data ?? [kids];
        return new StructureElement(
            ((NameToken)element.Data["S"]).Data,
            element.Data.TryGetValue("Alt", out var alt) ? Text(Resolve(document, alt)) : null,
            [
                .. children
                    .Select(c => Resolve(document, c))
                    .OfType<DictionaryToken>()
                    .Where(d => d.Data.ContainsKey("S"))
                    .Select(d => Element(document, d)),
            ]
        );
    }

    private static string Text(IToken token) =>
        token switch
        {
            HexToken hex => hex.Data,
            StringToken text => text.Data,
            _ => "",
        };

    private static IToken Resolve(PdfDocument document, IToken token) =>
        token is IndirectReferenceToken reference
            ? document.Structure.GetObject(reference.Data).Data
            : token;

    /// <summary>The middle of a letter: without side bearings, and about as high as an x.</summary>
    private static (double Left, double Right, double Bottom, double Top) Core(Letter letter)
    {
        var (a, b) = (letter.StartBaseLine, letter.EndBaseLine);
        var rise = letter.PointSize * 0.4;
        PdfPoint[] corners =
            letter.TextOrientation == TextOrientation.Horizontal
                ? [a, b, new(a.X, a.Y + rise)]
                : [a, b, new(a.X - rise, a.Y)];
        var (left, right) = (corners.Min(c => c.X), corners.Max(c => c.X));
        var (bottom, top) = (corners.Min(c => c.Y), corners.Max(c => c.Y));
        return (left + 0.3, right - 0.3, bottom + 0.3, top - 0.3);
    }
}
