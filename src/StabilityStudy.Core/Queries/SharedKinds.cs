namespace StabilityStudy.Core.Queries;

/// <summary>Kinds of data query that both reading and analyzing can raise.</summary>
public static class SharedKinds
{
    internal static QueryKinds Kinds { get; } = new();

    /// <summary>These kinds.</summary>
    public static ImmutableArray<QueryKind> All => [.. Kinds];

    // csharpier-ignore-start
    /// <summary>A limit wider than such a study needs.</summary>
    public static readonly QueryKind WideLimit = Kinds.Add("wide-limit", QueryRank.LaxCriterion, "a limit is above 15 % for a mean or above 25 % for single specimens", "give a narrower limit, or have the medical director give the reason");
    /// <summary>Tubes of one draw that cannot be of one draw.</summary>
    public static readonly QueryKind TubesDisagree = Kinds.Add("tubes-disagree", QueryRank.Stop, "two tubes of one specimen have different subjects or groups", "correct the row that is wrong, or give the draws different specimen codes");
    // csharpier-ignore-end
}
