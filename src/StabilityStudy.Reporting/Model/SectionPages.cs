namespace StabilityStudy.Reporting.Model;

/// <summary>On which page each section of a report starts, so that a sentence can name it. Empty until the pages are laid out.</summary>
/// <param name="Pages">Titles of sections with their pages, counted from 1.</param>
public sealed record SectionPages(ImmutableDictionary<string, int> Pages)
{
    private const int BeforeLayout = 88;

    /// <summary>Before the layout.</summary>
    public static SectionPages Unknown { get; } = new(ImmutableDictionary<string, int>.Empty);

    /// <summary>For outputs without pages.</summary>
    public static SectionPages None { get; } =
        new(ImmutableDictionary<string, int>.Empty) { HavePages = false };

    /// <summary>Whether the output has pages at all.</summary>
    public bool HavePages { get; private init; } = true;

    /// <summary>A reference to a section: <c>"Data queries", page 17</c>; without a page in outputs that have none.</summary>
    public string Of(string title) =>
        PageOf(title) is { } page
            ? string.Create(CultureInfo.InvariantCulture, $"\"{title}\", page {page}")
            : $"\"{title}\"";

    /// <summary>The page of a section; null where there is none. Before the layout some number holds the room of the right one, which then moves nothing.</summary>
    public int? PageOf(string title) =>
        Pages.TryGetValue(title, out var page) ? page
        : HavePages && Pages.IsEmpty ? BeforeLayout
        : null;
}
