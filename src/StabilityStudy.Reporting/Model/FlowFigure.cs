namespace StabilityStudy.Reporting.Model;

/// <summary>What becomes of a number of things: boxes from left to right that branch at the last, and beside each branch what was left out.</summary>
/// <param name="Steps">Boxes before the branching, from left to right; at least one.</param>
/// <param name="Branches">Branches from top to bottom; may be empty.</param>
/// <param name="AlternativeText">What the figure shows, for readers who cannot see it and for plain text.</param>
internal sealed record FlowFigure(
    ImmutableArray<string> Steps,
    ImmutableArray<FlowBranch> Branches,
    string AlternativeText
) : Block;

/// <summary>One branch of a <see cref="FlowFigure"/>.</summary>
/// <param name="Box">Text of its box.</param>
/// <param name="LeftOut">What is beside it and not in it; empty when nothing is.</param>
internal sealed record FlowBranch(string Box, string LeftOut);
