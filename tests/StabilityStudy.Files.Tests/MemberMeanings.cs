using System.Xml.Linq;

namespace StabilityStudy.Files.Tests;

/// <summary>What the members of our types mean: their documentation comments, as the compiler wrote them beside the assemblies.</summary>
internal static class MemberMeanings
{
    private static readonly Lazy<Dictionary<string, XElement>> s_summaries = new(() =>
        Directory
            .EnumerateFiles(AppContext.BaseDirectory, "StabilityStudy.*.xml")
            .SelectMany(file => XDocument.Load(file).Descendants("member"))
            .Where(member => member.Element("summary") is not null)
            .GroupBy(member => member.Attribute("name")!.Value, StringComparer.Ordinal)
            .ToDictionary(same => same.Key, same => same.First().Element("summary")!)
    );

    /// <summary>What a property means: the member of that name, of the type or of the one part of it that has such a member; empty where no comment says it.</summary>
    /// <param name="type">The type.</param>
    /// <param name="property">Its name as the file has it, with a small first letter.</param>
    public static string Of(Type type, string property)
    {
        var member = char.ToUpperInvariant(property[0]) + property[1..];
        var found =
            Own(type, member)
            ?? type.GetProperties()
                .Select(part => part.PropertyType)
                .Distinct()
                .Select(part => Own(part, member))
                .OfType<XElement>()
                .ToArray() switch
            {
                [var only] => only,
                _ => null,
            };
        return found is null ? "" : InWords(found);
    }

    private static XElement? Own(Type type, string member)
    {
        for (var declaring = type; declaring is not null; declaring = declaring.BaseType)
        {
            var name = (
                declaring.IsGenericType ? declaring.GetGenericTypeDefinition() : declaring
            ).FullName;
            if (
                s_summaries.Value.TryGetValue(
                    $"P:{name?.Replace('+', '.')}.{member}",
                    out var summary
                )
            )
            {
                return summary;
            }
        }

        return null;
    }

    /// <summary>A comment as the notes of other properties are written: small first letter, no full stop at the end.</summary>
    private static string InWords(XElement summary)
    {
        var text = string.Join(
                ' ',
                string.Concat(summary.Nodes().Select(Text))
                    .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            )
            .TrimEnd('.');
        // The name of a method keeps its capital.
        var first = text.Split(' ')[0];
        return
            text.Length > 1
            && char.IsLower(text[1])
            && !first.Contains('–', StringComparison.Ordinal)
            && !first.EndsWith("'s", StringComparison.Ordinal)
            ? char.ToLowerInvariant(text[0]) + text[1..]
            : text;
    }

    private static string Text(XNode node) =>
        node switch
        {
            XText text => text.Value,
            XElement element => Named(
                element.Attribute("cref")?.Value
                    ?? element.Attribute("name")?.Value
                    ?? element.Value
            ),
            _ => "",
        };

    private static string Named(string reference)
    {
        var name = reference.Split('.')[^1].Split('`')[0];
        return name.Length > 0 ? char.ToLowerInvariant(name[0]) + name[1..] : "";
    }
}
