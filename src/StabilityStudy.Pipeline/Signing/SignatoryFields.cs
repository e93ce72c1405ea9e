using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>The signature fields of a document: one for each signatory, in the order of signing.</summary>
internal static class SignatoryFields
{
    /// <summary>Name of the field of a signatory. The role itself may hold characters that a field's name may not.</summary>
    public static string NameOf(int index) => FormattableString.Invariant($"signatory{index + 1}");

    /// <summary>The signatory who signs in a field; null for a field of nobody.</summary>
    public static Signatory? SignatoryOf(ImmutableArray<Signatory> signatories, string field) =>
        signatories.Where((_, i) => NameOf(i) == field).FirstOrDefault();

    /// <summary>What the signature of a signatory means: "author: ran this study".</summary>
    public static string MeaningOf(Signatory signatory) => $"{signatory.Role}: {signatory.Meaning}";

    /// <summary>The empty fields of a drawn document. Whoever decides on the rows of a report has one that spans their places and its box.</summary>
    /// <param name="drawn">The drawn document.</param>
    /// <param name="signatories">Those who sign.</param>
    /// <param name="decides">Whether a signatory decides.</param>
    public static ImmutableArray<ReservedField> Of(
        DrawnReport drawn,
        ImmutableArray<Signatory> signatories,
        Func<Signatory, bool> decides
    ) =>
        [
            .. signatories.Zip(
                drawn.SignatureRectangles,
                (signatory, place) =>
                {
                    ImmutableArray<SignatureRectangle> places =
                        decides(signatory) && signatories.Count(decides) == 1
                            ? drawn.DecisionRectangles.Add(place)
                            : [place];
                    return new ReservedField(
                        NameOf(signatories.IndexOf(signatory)),
                        place.Page,
                        Around(places),
                        "Signature of the " + MeaningOf(signatory)
                    )
                    {
                        Areas = places.Length == 1 ? [] : [.. places.Select(Rectangle)],
                    };
                }
            ),
        ];

    private static PageRectangle Rectangle(SignatureRectangle place) =>
        new(place.Left, place.Bottom, place.Left + place.Width, place.Bottom + place.Height);

    private static PageRectangle Around(ImmutableArray<SignatureRectangle> places) =>
        new(
            places.Min(place => place.Left),
            places.Min(place => place.Bottom),
            places.Max(place => place.Left + place.Width),
            places.Max(place => place.Bottom + place.Height)
        );
}
