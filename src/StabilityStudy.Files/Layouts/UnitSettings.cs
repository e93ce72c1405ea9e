using System.Collections.Frozen;
using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Layouts;

/// <summary>What study.toml says of units: other spellings, and conversions.</summary>
internal static class UnitSettings
{
    /// <summary>Checks that a unit is given another name only, not another size or kind.</summary>
    public static void CheckName(TomlTable? table, Key key, string theirs, string ours)
    {
        if (
            UnitTable.Find(theirs) is not { } first
            || UnitTable.Find(ours) is not { } second
            || first == second
        )
        {
            return;
        }

        // A mass of D-dimer without more says nothing; which one it is, the laboratory knows.
        var isTold =
            first.Kind == QuantityKind.MassConcentration
            && second.Kind is QuantityKind.FibrinogenEquivalent or QuantityKind.DDimerUnits
            && first.Size == second.Size;
        if (isTold)
        {
            return;
        }

        table?.Fault(
            key,
            FileQueries.UnitMappedAcross,
            ours,
            first.Kind == second.Kind
                ? $"\"{theirs}\" is to be read as \"{ours}\", which is another size of the same quantity: every result would be wrong by a factor."
                : $"\"{theirs}\" is to be read as \"{ours}\", which is another quantity.",
            first.Kind == second.Kind
                ? $"Have the results converted: convert = {{ \"{first.Name}\" = \"{second.Name}\" }}."
                : "Remove it; ask the maker of the instrument what the unit is. No table converts one into the other."
        );
    }

    /// <summary>Reads the conversions.</summary>
    public static FrozenDictionary<string, UnitConversion> ReadConversions(TomlTable? table)
    {
        var found = new Dictionary<string, UnitConversion>(StringComparer.Ordinal);
        foreach (var (from, to) in LayoutReader.Texts(table))
        {
            if (UnitConversion.Of(from, to) is { } conversion)
            {
                found.Add(from, conversion);
                continue;
            }

            var unknown = new[] { from, to }.FirstOrDefault(unit => UnitTable.Find(unit) is null);
            table?.Fault(
                LayoutReader.TextOf(from),
                FileQueries.UnitMappedAcross,
                to,
                unknown is null
                    ? $"\"{from}\" and \"{to}\" are units of different quantities, and nothing converts one into the other."
                    : $"The unit \"{unknown}\" is not in the table of units, so that nothing is known of its size.",
                unknown is null
                    ? "Remove it; ask the maker of the instrument what the unit is."
                    : $"Write units as the protocol does; those that can be converted are {string.Join(", ", UnitTable.All.Select(unit => unit.Name))}."
            );
        }

        return found.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
