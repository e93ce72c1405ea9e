namespace StabilityStudy.Core.Criteria;

/// <summary>
/// Two draws of one person are not two persons. The interval of a mean spans the one over persons; that of a fitted line or of slopes does not, so it cannot be trusted where persons gave several specimens.
/// </summary>
internal static class RepeatDrawsDoubt
{
    /// <summary>The doubt; null when every specimen is of another person.</summary>
    public static VerdictReason? Of(ImmutableArray<PairRecord> pairs)
    {
        var specimens = pairs.DistinctBy(pair => pair.Specimen).ToImmutableArray();
        var persons = specimens.Select(pair => pair.Subject).Distinct().Count();
        return persons == specimens.Length
            ? null
            : new RepeatDrawsReason(specimens.Length, persons);
    }
}
