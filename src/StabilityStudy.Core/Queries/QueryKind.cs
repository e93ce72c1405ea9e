namespace StabilityStudy.Core.Queries;

/// <summary>One kind of data query: the same code, rank and advice wherever it is raised.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Rank">What it means for the decision.</param>
/// <param name="Meaning">What is wrong, in words.</param>
/// <param name="Remedy">What to do about it, in words.</param>
public sealed record QueryKind(string Code, QueryRank Rank, string Meaning, string Remedy)
{
    /// <summary>
    /// Gives a query its words from what was read and its values, null where these do not fit: for queries about the
    /// laboratory's own files and record, which a report does not carry, so that they cannot be raised again from it. It can
    /// then be drawn again from what its analysis.json states of them, and can state nothing else. Null for other kinds.
    /// </summary>
    public Func<DataQuery, DataQuery?>? Worded { get; init; }

    /// <summary>What a reader of page 1 must see of it first, in a few words as a sentence: "One mean decides."; null where its message says it as shortly.</summary>
    public string? Point { get; init; }

    /// <summary>What to do about it, as a sentence.</summary>
    public string Advice => $"{char.ToUpperInvariant(Remedy[0])}{Remedy[1..]}.";

    /// <summary>What it does to the report.</summary>
    public Severity Severity => Rank.Severity();
}
