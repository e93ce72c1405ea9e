using StabilityStudy.Core.Planning;

namespace StabilityStudy.Files.Starting;

/// <summary>Why a reduced study takes so many specimens, in words.</summary>
public static class ReducedNumberWords
{
    /// <summary>A number of specimens and its reason.</summary>
    public static string Of(ReducedNumber number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return FormattableString.Invariant(
            $"{number.Group}: {number.Specimens} specimens (original {number.Original}): {Reason(number)}."
        );
    }

    /// <summary>Why so many, as the report says it.</summary>
    internal static string Reason(ReducedNumber number) =>
        number.Basis switch
        {
            ReducedBasis.ShareWithOneOutside => FormattableString.Invariant(
                $"the fewest of which one may lie outside and {number.SharePercent} % are still shown (criterion {number.Criterion}, exact bound)"
            ),
            ReducedBasis.NearLevels =>
                $"as many as criterion {number.Criterion} wants near its levels",
            ReducedBasis.BesideLevels =>
                $"eight baselines on either side of each level of criterion {number.Criterion}",
            ReducedBasis.Mean => "the fewest for a mean (common practice)",
            ReducedBasis.AsOriginal => $"as the original: criterion {number.Criterion} needs them",
        };
}
