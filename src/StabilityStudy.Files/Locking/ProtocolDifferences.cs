using StabilityStudy.Core.Locking;

namespace StabilityStudy.Files.Locking;

/// <summary>Compares two protocols key by key, as they are written.</summary>
internal static class ProtocolDifferences
{
    private const string Specimens = "specimens";
    private const string Groups = "group";

    /// <summary>What names an entry of a list of tables.</summary>
    private static readonly ImmutableArray<string> s_names =
    [
        "id",
        "level",
        "group",
        "role",
        "analyte",
    ];

    /// <summary>What names entries of one list that have the same name otherwise, such as the expected changes of a group.</summary>
    private static readonly ImmutableArray<string> s_furtherNames =
    [
        .. s_names,
        "storage",
        "time",
        "name",
        "range",
    ];

    /// <summary>Every place at which they differ, in the order of the later one; what was taken away stands last.</summary>
    public static ImmutableArray<ProtocolDifference> Between(TomlEntries before, TomlEntries after)
    {
        var (old, now) = (Places(before), Places(after));
        var (oldByKey, nowByKey) = (
            old.ToDictionary(place => place.Key, place => place.Text),
            now.ToDictionary(place => place.Key, place => place.Text)
        );
        return
        [
            .. now.Where(place => oldByKey.GetValueOrDefault(place.Key) != place.Text)
                .Select(place =>
                    Difference(place.Key, oldByKey.GetValueOrDefault(place.Key), place.Text)
                ),
            .. old.Where(place => !nowByKey.ContainsKey(place.Key))
                .Select(place => Difference(place.Key, place.Text, null)),
        ];
    }

    private static ProtocolDifference Difference(string key, string? before, string? after)
    {
        var parts = key.Split('/');
        return new(
            string.Join('.', parts),
            before,
            after,
            parts is [Groups, _, Specimens] && before is not null && after is not null
                    ? DifferenceKind.Number
                : parts is ["version"] or ["signatories", ..] or [_, _, "name"]
                    ? DifferenceKind.Label
                : DifferenceKind.Rule
        )
        {
            Meaning = ProtocolPlaceWords.Of(parts),
        };
    }

    private static ImmutableArray<(string Key, string Text)> Places(TomlEntries entries) =>
        [
            .. Within("", entries)
                .GroupBy(place => place.Key)
                // Entries of one name cannot be told apart; a sound protocol has none.
                .Select(same => (same.Key, string.Join(" ", same.Select(place => place.Text)))),
        ];

    private static IEnumerable<(string Key, string Text)> Within(string path, TomlValue value) =>
        value switch
        {
            TomlEntries table => table.Entries.SelectMany(entry =>
                Within(path.Length == 0 ? entry.Key : $"{path}/{entry.Key}", entry.Value)
            ),
            TomlList { Items: [TomlEntries, ..] } list => Named(list)
                .SelectMany(entry => Within($"{path}/{entry.Name}", entry.Item)),
            _ => [(path, OneLine(value.Text))],
        };

    /// <summary>The entries of a list with their names; where these do not tell them apart, with what stands beside the name.</summary>
    private static IEnumerable<(string Name, TomlValue Item)> Named(TomlList list)
    {
        var names = list.Items.Select((item, i) => NameOf(item, i, s_names)).ToArray();
        var alike = names.CountBy(name => name).Where(item => item.Value > 1).ToDictionary();
        return list.Items.Select(
            (item, i) =>
                (
                    alike.ContainsKey(names[i]) ? NameOf(item, i, s_furtherNames) : names[i],
                    Item: item
                )
        );
    }

    private static string NameOf(TomlValue item, int place, ImmutableArray<string> keys)
    {
        var entries = (item as TomlEntries)?.Entries ?? [];
        string[] names =
        [
            .. from name in keys
            from entry in entries
            where entry.Key == name
            let written = entry.Value switch
            {
                TomlText text => text.Content.Replace('/', ' '),
                TomlNumber number => number.Text,
                TomlList { Items: [TomlNumber low, TomlNumber high] } =>
                    $"{low.Text} to {high.Text}",
                _ => null,
            }
            where written is not null
            select written,
        ];
        return names.Length == 0
            ? FormattableString.Invariant($"{place + 1}")
            : string.Join(' ', names);
    }

    private static string OneLine(string text) =>
        string.Join(
            ' ',
            text.Split((char[])['\r', '\n', '\t', ' '], StringSplitOptions.RemoveEmptyEntries)
        );
}
