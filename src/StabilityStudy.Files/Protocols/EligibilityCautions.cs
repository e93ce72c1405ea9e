namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for tubes that are let in although laboratories usually reject them.</summary>
internal static class EligibilityCautions
{
    /// <summary>Common practice: a tube filled to less is rejected, for there is too much citrate in it.</summary>
    private const decimal UsualFillPercent = 90;

    /// <summary>Common practice: above this the citrate has to be corrected.</summary>
    private const decimal UsualHematocritPercent = 55;

    public static void Check(ProtocolDraft draft)
    {
        if (!draft.Root.IsSound(ProtocolKeys.Eligibility))
        {
            return;
        }

        var rules = draft.Eligibility;
        string[] lax =
        [
            .. rules.FillPercentMinimum is null ? ["any fill"]
            : rules.FillPercentMinimum < UsualFillPercent
                ? [FormattableString.Invariant($"a fill of {rules.FillPercentMinimum} %")]
            : Array.Empty<string>(),
            .. rules.HematocritPercentMaximum is null ? ["any hematocrit"]
            : rules.HematocritPercentMaximum > UsualHematocritPercent
                ?
                [
                    FormattableString.Invariant(
                        $"a hematocrit of {rules.HematocritPercentMaximum} %"
                    ),
                ]
            : Array.Empty<string>(),
            .. rules.RejectClot ? Array.Empty<string>() : ["clots"],
        ];
        if (lax.Length > 0)
        {
            draft.Root.Remark(
                ProtocolKeys.Eligibility,
                CautionQueries.EligibilityLax,
                "",
                $"The protocol lets in tubes that are usually rejected: {string.Join(", ", lax)}."
            );
        }
    }
}
