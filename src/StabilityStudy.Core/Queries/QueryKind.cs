namespace StabilityStudy.Core.Queries;

/// <summary>One kind of data query: the same code, rank and advice wherever it is raised.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Rank">What it means for the decision.</param>
/// <param name="Meaning">What is wrong, in words.</param>
/// <param name="Remedy">What to do about it, in words.</param>
public sealed record QueryKind(string Code, QueryRank Rank, string Meaning, string Remedy)
{
    /// <summary>What it does to the report.</summary>
    public Severity Severity => Rank.Severity();
}
