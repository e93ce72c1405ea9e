namespace StabilityStudy.Core.Protocol;

/// <summary>Which study a protocol repeats, to show that its approved window still holds; it documents, and nothing is concluded from it.</summary>
/// <param name="Report">Name of the original report: study code and beginning of the digest.</param>
/// <param name="Digest">Digest of the original's inputs.</param>
/// <param name="Tier">How much is repeated.</param>
/// <param name="Reason">What changed.</param>
public sealed record RepeatOf(string Report, string Digest, RepeatTier Tier, string Reason);

/// <summary>How much of a study is repeated. The zero member shows more.</summary>
public enum RepeatTier
{
    /// <summary>The original study again: for a new reagent, principle, tube type, instrument or transport.</summary>
    Full,

    /// <summary>A study at the longest approved time, judged by the limits of the original: for a new lot of the same reagent.</summary>
    Reduced,
}
