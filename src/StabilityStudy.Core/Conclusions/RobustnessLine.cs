namespace StabilityStudy.Core.Conclusions;

/// <summary>What a cell would conclude if one thing were otherwise.</summary>
/// <param name="Question">What is changed.</param>
/// <param name="Conclusion">The conclusion that the cell would give on its own.</param>
/// <param name="Changes">Whether that differs from the cell's own conclusion.</param>
public sealed record RobustnessLine(
    RobustnessQuestion Question,
    Conclusion Conclusion,
    bool Changes
)
{
    /// <summary>Which way the conclusion would go.</summary>
    public RobustnessDirection Direction { get; init; }

    internal static RobustnessLine Of(
        RobustnessQuestion question,
        ImmutableArray<CriterionResult> criteria,
        ImmutableArray<CriterionResult> otherwise
    ) => Of(question, CellEvaluation.Conclude(criteria), CellEvaluation.Conclude(otherwise));

    internal static RobustnessLine Of(
        RobustnessQuestion question,
        Conclusion own,
        Conclusion other
    ) =>
        new(question, other, other != own)
        {
            Direction =
                other == own ? RobustnessDirection.None
                : Standing(other) > Standing(own) ? RobustnessDirection.TowardSupported
                : RobustnessDirection.AwayFromSupported,
        };

    private static int Standing(Conclusion conclusion) =>
        conclusion switch
        {
            Conclusion.Supported => 2,
            Conclusion.Inconclusive or Conclusion.NotAssessed or Conclusion.NotReached => 1,
            Conclusion.NotSupported => 0,
        };
}

/// <summary>Which way a conclusion would go. The zero member is the cautious one.</summary>
public enum RobustnessDirection
{
    /// <summary>Away from supported.</summary>
    AwayFromSupported,

    /// <summary>It would stay.</summary>
    None,

    /// <summary>Toward supported.</summary>
    TowardSupported,
}
