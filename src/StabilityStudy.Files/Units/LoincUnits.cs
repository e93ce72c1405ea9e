using System.Collections.Frozen;

namespace StabilityStudy.Files.Units;

/// <summary>
/// What results of a LOINC code measure, for the codes of coagulation tests that are in common use. The codes' kinds of property
/// (time, relative time, mass concentration) are given from memory of the LOINC names; codes that are not listed are not judged.
/// </summary>
internal static class LoincUnits
{
    private static readonly FrozenDictionary<string, QuantityKind> Kinds = new Dictionary<
        string,
        QuantityKind
    >(StringComparer.Ordinal)
    {
        // Coagulation times: aPTT in plasma and blood, PT in plasma and blood.
        ["14979-9"] = QuantityKind.Time,
        ["3173-2"] = QuantityKind.Time,
        ["5902-2"] = QuantityKind.Time,
        ["5964-2"] = QuantityKind.Time,
        // INR in plasma and blood.
        ["6301-6"] = QuantityKind.NormalizedRatio,
        ["34714-6"] = QuantityKind.NormalizedRatio,
        // Fibrinogen, mass in a volume.
        ["3255-7"] = QuantityKind.MassConcentration,
        // D-dimer: fibrinogen equivalent units, and D-dimer units.
        ["48065-7"] = QuantityKind.FibrinogenEquivalent,
        ["48067-3"] = QuantityKind.FibrinogenEquivalent,
        ["48066-5"] = QuantityKind.DDimerUnits,
        ["48058-2"] = QuantityKind.DDimerUnits,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Whether the unit measures something else than the code says; false where either is not known.</summary>
    public static bool Contradict(string loinc, string unit) =>
        Kinds.TryGetValue(loinc, out var kind)
        && UnitTable.Find(unit) is { } known
        && known.Kind != kind;
}
