using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Tests.Pdf;
using UglyToad.PdfPig;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>The report of an odd study, drawn and read back once for all tests.</summary>
/// <param name="Model">What was drawn.</param>
/// <param name="Signatures">The places for signatures.</param>
/// <param name="Pages">What is written on each page, without spaces.</param>
/// <param name="Overlaps">Letters that are drawn over each other; empty where there are none.</param>
internal sealed record DrawnStudy(
    ReportModel Model,
    ImmutableArray<SignatureRectangle> Signatures,
    ImmutableArray<string> Pages,
    string Overlaps
)
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> s_properties = new();

    private readonly Lazy<string> _body = new(() =>
        PdfReading.Body(Pages, Model.Header.Left, Model.Header.Right, Model.Header.Fingerprint)
    );

    private readonly Lazy<ImmutableArray<string>> _texts = new(() =>
        [.. TextsOf(Model.Sections).Distinct(StringComparer.Ordinal)]
    );

    /// <summary>All text of the pages without spaces, the running texts left out.</summary>
    public string Body => _body.Value;

    /// <summary>Every text in the model but the figures' alternative ones.</summary>
    public ImmutableArray<string> Texts => _texts.Value;

    public static DrawnStudy Of(string name, PaperSize paper)
    {
        var model = ReportBuilder.Build(OddStudies.All[name], paper);
        var drawn = KeptDrawings.Keep(
            PdfDrawing.Draw(model),
            FormattableString.Invariant($"study-{name.Replace(' ', '-')}-{paper}")
        );
        using var document = PdfDocument.Open(drawn.Pdf.ToArray());
        var pages = document.GetPages().ToArray();
        return new(
            model,
            drawn.SignatureRectangles,
            [.. pages.Select(PdfReading.Text)],
            string.Join('\n', pages.SelectMany(PdfReading.Overlaps))
        );
    }

    private static IEnumerable<string> TextsOf(object? value) =>
        value switch
        {
            null => [],
            string text => [text],
            IEnumerable items => items.Cast<object?>().SelectMany(TextsOf),
            _ => s_properties
                .GetOrAdd(value.GetType(), Properties)
                .SelectMany(property => TextsOf(property.GetValue(value))),
        };

    private static PropertyInfo[] Properties(Type type) =>
        type.IsPrimitive || type.IsEnum
            ? []
            :
            [
                .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                    .Where(property =>
                        property.Name != "AlternativeText"
                        && !property.PropertyType.IsPrimitive
                        && !property.PropertyType.IsEnum
                    ),
            ];
}
