namespace StabilityStudy.Core.Protocol;

/// <summary>The chance of "supported" in words: one set for protocols, plans, locks and documents. The zero member is the least.</summary>
public enum ChanceOfSupport
{
    /// <summary>Below 5 %.</summary>
    OutOfReach,

    /// <summary>5 % to below 20 %.</summary>
    Unlikely,

    /// <summary>20 % to below 50 %.</summary>
    Doubtful,

    /// <summary>50 % to below 80 %.</summary>
    Open,

    /// <summary>80 % or more.</summary>
    Likely,
}

/// <summary>From which chance on a word is used.</summary>
public static class ChancesOfSupport
{
    private static readonly ImmutableArray<(ChanceOfSupport Word, double From)> s_words =
    [
        (ChanceOfSupport.Likely, 0.80),
        (ChanceOfSupport.Open, 0.50),
        (ChanceOfSupport.Doubtful, 0.20),
        (ChanceOfSupport.Unlikely, 0.05),
        (ChanceOfSupport.OutOfReach, 0),
    ];

    /// <summary>The words, the best first.</summary>
    public static ImmutableArray<ChanceOfSupport> All { get; } =
    [.. s_words.Select(item => item.Word)];

    /// <summary>The least chance that a word is used for, 0 to 1.</summary>
    public static double From(ChanceOfSupport word) =>
        s_words.Single(item => item.Word == word).From;

    /// <summary>The word of a chance.</summary>
    /// <param name="chance">0 to 1.</param>
    public static ChanceOfSupport Of(double chance) =>
        s_words.FirstOrDefault(item => chance >= item.From).Word;
}
