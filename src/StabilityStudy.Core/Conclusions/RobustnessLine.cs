using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Core.Conclusions;

/// <summary>What a cell would conclude if one thing were otherwise.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Question">What is changed, in words.</param>
/// <param name="Conclusion">The conclusion that the cell would give on its own.</param>
/// <param name="Changes">Whether that differs from the cell's own conclusion.</param>
public sealed record RobustnessLine(
    string Code,
    string Question,
    Conclusion Conclusion,
    bool Changes
)
{
    /// <summary>Which way the conclusion would go.</summary>
    public RobustnessDirection Direction { get; init; }

    /// <summary>Where the question is of further specimens: how many, and what they would have done.</summary>
    public FurtherSpecimens? Further { get; init; }

    internal static RobustnessLine Of(
        string code,
        FurtherSpecimens further,
        ImmutableArray<CriterionResult> criteria,
        ImmutableArray<CriterionResult> otherwise
    ) => Of(code, further.InWords, criteria, otherwise) with { Further = further };

    internal static RobustnessLine Of(
        string code,
        string question,
        ImmutableArray<CriterionResult> criteria,
        ImmutableArray<CriterionResult> otherwise
    ) => Of(code, question, CellEvaluation.Conclude(criteria), CellEvaluation.Conclude(otherwise));

    internal static RobustnessLine Of(
        string code,
        string question,
        Conclusion own,
        Conclusion other
    ) =>
        new(code, question, other, other != own)
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

/// <summary>Specimens that are taken to have turned out otherwise.</summary>
/// <param name="Count">How many, beside those that did.</param>
/// <param name="WouldHave">What they would have done, after "had": "been outside the limit".</param>
public sealed record FurtherSpecimens(int Count, string WouldHave)
{
    internal string InWords =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"if {(Count == 1 ? "one more specimen" : $"{Count} more specimens")} had {WouldHave}"
        );
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
