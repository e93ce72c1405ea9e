namespace StabilityStudy.Reporting.Proving;

/// <summary>What came of a proof, in words.</summary>
public static class ProofWords
{
    /// <summary>The outcome in one sentence.</summary>
    public static string Outcome(ProgramProof proof)
    {
        ArgumentNullException.ThrowIfNull(proof);
        var all = proof.Figures.Length;
        var notChecked = Number(proof.Figures, Agreement.NotChecked);
        return (
                Number(proof.Figures, Agreement.Differs) is > 0 and var differ
                    ? FormattableString.Invariant(
                        $"{differ} of {all} figures DO NOT AGREE. Do not use this program on this computer for a study until the reason is found."
                    )
                    : FormattableString.Invariant(
                        $"Every figure that was checked agrees: {all - notChecked} of {all}."
                    )
            )
            + (
                notChecked == 0
                    ? ""
                    : FormattableString.Invariant(
                        $" {notChecked} could not be checked on this computer."
                    )
            );
    }

    /// <summary>How many of some figures agree: "10 of 10".</summary>
    public static string Count(ImmutableArray<ProofFigure> figures) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Number(figures, Agreement.Agrees)} of {figures.Length}"
        );

    /// <summary>Whether a figure agrees.</summary>
    public static string Of(Agreement agreement) =>
        agreement switch
        {
            Agreement.Differs => "DIFFERS",
            Agreement.NotChecked => "not checked",
            Agreement.Agrees => "agrees",
        };

    private static int Number(ImmutableArray<ProofFigure> figures, Agreement agreement) =>
        figures.Count(figure => figure.Agreement == agreement);
}
