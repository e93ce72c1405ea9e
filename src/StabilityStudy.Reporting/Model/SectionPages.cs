namespace StabilityStudy.Reporting.Model;

/// <summary>On which page each section of a report starts, so that a sentence can name it. Empty until the pages are laid out.</summary>
/// <param name="Pages">Titles of sections with their pages, counted from 1.</param>
public sealed record SectionPages(ImmutableDictionary<string, int> Pages)
{
    /// <summary>Before the layout.</summary>
    public static SectionPages Unknown { get; } = new(ImmutableDictionary<string, int>.Empty);

    /// <summary>For outputs without pages.</summary>
    public static SectionPages None { get; } =
        new(ImmutableDictionary<string, int>.Empty) { HavePages = false };

    /// <summary>Whether the output has pages at all.</summary>
    public bool HavePages { get; private init; } = true;

    /// <summary>A reference to a section: <c>"Data queries", page 17</c>; without the page while it is not known.</summary>
    public string Of(string title) =>
        Pages.TryGetValue(title, out var page)
            ? string.Create(CultureInfo.InvariantCulture, $"\"{title}\", page {page}")
            : $"\"{title}\"";
}
