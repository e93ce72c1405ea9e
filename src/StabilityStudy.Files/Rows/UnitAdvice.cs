using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Rows;

/// <summary>What can be done about a unit that is not the protocol's.</summary>
internal static class UnitAdvice
{
    /// <summary>The advice.</summary>
    public static string Of(string unit, string planned)
    {
        var (theirs, ours) = (UnitTable.Find(unit), UnitTable.Find(planned));
        if (theirs is null || ours is null)
        {
            return $"If it is another name of {planned}, map it under [read.results.values] in study.toml: unit = {{ \"{unit}\" = \"{planned}\" }}; otherwise correct the file.";
        }

        if (theirs == ours)
        {
            return $"It is another name of {planned}; map it under [read.results.values] in study.toml: unit = {{ \"{unit}\" = \"{planned}\" }}.";
        }

        if (theirs.Kind == ours.Kind)
        {
            return $"Have the results converted, under [read.results] in study.toml: convert = {{ \"{unit}\" = \"{planned}\" }}.";
        }

        return
            theirs.Kind == QuantityKind.MassConcentration
            && ours.Kind is QuantityKind.FibrinogenEquivalent or QuantityKind.DDimerUnits
            ? $"Ask the maker of the reagent whether these are fibrinogen equivalent units (FEU) or D-dimer units (DDU). Only if they are those of the protocol, map it under [read.results.values]: unit = {{ \"{unit}\" = \"…\" }}."
            : $"They measure different quantities, and nothing converts one into the other: see whether the right column is read, or correct the protocol before it is locked.";
    }
}
