using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>
/// Fields for archive time stamps, which outlast certificates (ETSI EN 319 142-1, clause 5.4.3). They are put into a document when it is drawn and show nothing, since some readers reject a field that
/// appears in a document after its certification.
/// </summary>
public static class ArchiveFields
{
    /// <summary>How many there are: an authority's certificate lasts about ten years, and evidence may be needed for thirty.</summary>
    public const int Count = 4;

    private const string Prefix = "archive";

    /// <summary>The empty fields, in the order in which they are filled. None takes room on the page.</summary>
    public static ImmutableArray<ReservedField> Reserved { get; } =
    [
        .. Enumerable
            .Range(1, Count)
            .Select(number => new ReservedField(
                NameOf(number),
                1,
                new PageRectangle(0, 0, 0, 0),
                FormattableString.Invariant($"Room for archive time stamp {number}, not visible")
            )),
    ];

    /// <summary>Whether a field of this name is for archive time stamps.</summary>
    public static bool Holds(string name) =>
        Reserved.Any(field => string.Equals(field.Name, name, StringComparison.Ordinal));

    private static string NameOf(int number) => FormattableString.Invariant($"{Prefix}{number}");
}
