namespace StabilityStudy.Core.Pairing;

/// <summary>Whether a tube may be used at all, by what was seen when it was collected. Each rule gives its reason in words.</summary>
internal static class EligibilityRules
{
    /// <summary>Why the tube may not be used; null when it may.</summary>
    /// <param name="tube">The tube.</param>
    /// <param name="storage">Its storage.</param>
    /// <param name="rules">The protocol's rules.</param>
    public static string? Problem(TubeRow tube, Storage storage, Eligibility rules)
    {
        if (tube.Material is SpecimenMaterial.Serum or SpecimenMaterial.OtherAnticoagulant)
        {
            return $"tube {tube.Tube} holds {(tube.Material == SpecimenMaterial.Serum ? "serum" : "another anticoagulant")}, not citrated blood or plasma";
        }

        if (rules.FillPercentMinimum is { } fill && tube.FillPercent < fill)
        {
            return $"tube {tube.Tube} filled to {Text(tube.FillPercent.Value)} % of nominal, at least {Text(fill)} % required";
        }

        if (rules.HematocritPercentMaximum is { } hematocrit && tube.HematocritPercent > hematocrit)
        {
            return Hematocrit(tube.HematocritPercent.Value, hematocrit);
        }

        return
            tube.Origin is Origin.Spiked or Origin.Pool && storage.State == StorageState.WholeBlood
            ? "spiked or pooled material does not stand for a patient's whole blood"
            : null;
    }

    /// <summary>Why a baseline tube may not be used; null when it may.</summary>
    public static string? BaselineProblem(TubeRow tube, Storage storage, Eligibility rules) =>
        rules.RejectClot && tube.Clot == ClotCheck.Yes
            ? $"clot in baseline tube {tube.Tube}"
            : Problem(tube, storage, rules);

    /// <remarks>Citrate for a hematocrit H in percent: volume of blood · (100 − H)/(595 − H).</remarks>
    private static string Hematocrit(decimal percent, decimal maximum) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"hematocrit {percent} % is above {maximum} %: the citrate was not adjusted (volume of blood · (100 − H)/(595 − H), here {(100 - percent) / (595 - percent):0.000} mL of citrate for 1 mL of blood)"
        );

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
