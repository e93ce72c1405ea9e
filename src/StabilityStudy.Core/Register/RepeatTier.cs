namespace StabilityStudy.Core.Register;

/// <summary>What study shows that an approved window still holds. The zero member shows more.</summary>
public enum RepeatTier
{
    /// <summary>The original study again: for a new reagent, principle, tube type, instrument or transport.</summary>
    Full,

    /// <summary>A study at the longest approved time, judged by the limits of the original: for a new lot of the same reagent.</summary>
    Reduced,
}
