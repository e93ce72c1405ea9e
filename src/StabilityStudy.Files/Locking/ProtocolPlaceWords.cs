using System.Buffers;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Locking;

/// <summary>A place of the protocol in words, from the declarations of its keys.</summary>
internal static class ProtocolPlaceWords
{
    private static readonly SearchValues<char> s_ends = SearchValues.Create(";:(");

    /// <summary>"group none: planned number of specimens".</summary>
    /// <param name="parts">The keys down to the place, and behind the key of each list what names the entry.</param>
    public static string Of(ReadOnlySpan<string> parts)
    {
        var tables = new List<string>();
        var keys = ProtocolKeys.Table;
        for (var i = 0; i < parts.Length; i++)
        {
            var name = parts[i];
            switch (keys.Keys.FirstOrDefault(key => key.Name == name))
            {
                case TableKey table when i < parts.Length - 1:
                    tables.Add(
                        table.IsList ? $"{Spoken(table.Name)} {parts[++i]}" : Spoken(table.Name)
                    );
                    keys = table.Keys;
                    break;
                case { } key:
                    return Joined(tables, Brief(key.Note, parts[0] == ProtocolKeys.Criteria.Name));
                case null:
                    return Joined(tables, Spoken(string.Join(' ', parts[i..]!)));
            }
        }

        return Joined(tables, "");
    }

    private static string Joined(List<string> tables, string place) =>
        string.Join(
            ": ",
            new[] { string.Join(", ", tables), place }.Where(text => text.Length > 0)
        );

    private static string Spoken(string name) => name.Replace('_', ' ');

    /// <summary>What a key means, without the kinds of criterion that have it and without how it is written.</summary>
    private static string Brief(string note, bool hasKinds)
    {
        const string colon = ": ";
        var text =
            hasKinds && note.IndexOf(colon, StringComparison.Ordinal) is > 0 and var kinds
                ? note[(kinds + colon.Length)..]
                : note;
        return text.AsSpan().IndexOfAny(s_ends) is > 0 and var end ? text[..end].TrimEnd() : text;
    }
}
