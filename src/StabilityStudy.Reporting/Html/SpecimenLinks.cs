using System.Xml.Linq;

namespace StabilityStudy.Reporting.Html;

/// <summary>Makes of every mention of a specimen a link to the row with its results.</summary>
internal sealed class SpecimenLinks(SpecimenRows rows)
{
    /// <summary>Around a code that a specimen has: it is a link even where it could be mistaken for a number.</summary>
    private const string Mention = "specimen";

    private static readonly char[] s_ends = [' ', '\n', ',', ';', ':', '(', ')', '"'];

    /// <summary>What follows is about the results of this; null where nothing is known.</summary>
    private string? _subject;

    /// <summary>A code that a specimen has.</summary>
    public static XElement Of(string specimen) => new(Mention, specimen);

    /// <summary>Says which results an element is about.</summary>
    public static void SetSubject(XElement element, string? subject)
    {
        if (subject is not null)
        {
            element.AddAnnotation(subject);
        }
    }

    /// <summary>Puts the links.</summary>
    public void Put(XElement element)
    {
        var before = _subject;
        var own = element.Annotation<string>();
        _subject = own ?? _subject;
        if (element.FirstNode is XText { NextNode: null } only && rows.IsSubject(only.Value))
        {
            _subject = only.Value;
            return;
        }

        foreach (var node in element.Nodes().ToList())
        {
            switch (node)
            {
                case XText text:
                    text.ReplaceWith(Linked(text.Value));
                    break;
                case XElement { Name.LocalName: Mention } mention:
                    mention.ReplaceWith(Link(mention.Value, null));
                    break;
                case XElement { Name.LocalName: "svg" or "pre" }:
                    break;
                // A row with results is where the links lead.
                case XElement child when child.Annotation<SpecimenResults>() is null:
                    Put(child);
                    break;
                default:
                    break;
            }
        }

        // What a heading, a caption or a heading within a table names ends with its section or its table.
        if (own is not null || element.Name.LocalName is "section" or "table")
        {
            _subject = before;
        }
    }

    private IEnumerable<object> Linked(string text)
    {
        string? analyte = null;
        var written = 0;
        for (var start = 0; start < text.Length; )
        {
            var found = text.IndexOfAny(s_ends, start);
            var end = found < 0 ? text.Length : found;
            var word = text[start..end].TrimEnd('.');
            if (IsUnmistakable(word) && !rows.RowsOf(word).IsEmpty)
            {
                yield return text[written..start];
                yield return Link(word, analyte);
                written = start + word.Length;
            }

            // An analyte holds for what follows it, up to the end of its part of the sentence.
            analyte =
                end < text.Length && text[end] == ';' ? null
                : rows.IsAnalyte(word) ? word
                : analyte;
            start = end + 1;
        }

        yield return text[written..];
    }

    private object Link(string specimen, string? analyte) =>
        rows.Find(specimen, _subject, analyte) is { } row
            ? new XElement("a", new XAttribute("href", "#" + row.Id), specimen)
            : specimen;

    /// <summary>Whether a code cannot be a number or a word of the report.</summary>
    private static bool IsUnmistakable(string word) =>
        word.Any(char.IsAsciiDigit) && word.Any(char.IsLetter);
}
