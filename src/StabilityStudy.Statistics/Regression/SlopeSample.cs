namespace StabilityStudy.Statistics.Regression;

/// <summary>The slopes between two cuts, with the numbers below either; no cut is the end of all.</summary>
internal sealed record SlopeInterval(SlopeCut? From, long Below, SlopeCut? To, long UpTo)
{
    public long Size => UpTo - Below;
}

/// <summary>Slopes drawn in an interval, in order.</summary>
internal sealed record SlopeSample(SlopeInterval Interval, ReadOnlyMemory<ExactSlope> Drawn)
{
    public int Count => Drawn.Length;

    public ExactSlope this[long place] => Drawn.Span[(int)place];

    /// <summary>Two and a half standard errors of the place that a rank has among those drawn; wider brackets cost more than the few ranks that lie outside.</summary>
    public int Reach => (int)(1.25 * Math.Sqrt(Count)) + 1;

    /// <summary>How many slopes a bracket around a rank is likely to hold.</summary>
    public double Bracketed => 2.0 * Reach / Count * Interval.Size;

    public long PlaceOf(long rank) =>
        (long)Math.Clamp((double)(rank - Interval.Below) / Interval.Size * Count, 0, Count - 1);

    /// <summary>Whether ranks lie so far from the ends that their brackets do.</summary>
    public bool Holds(ImmutableArray<long> ranks) =>
        ranks.All(rank =>
            rank > Interval.Below
            && rank <= Interval.UpTo
            && PlaceOf(rank) is var place
            && place >= Reach
            && place + Reach < Count
        );

    /// <summary>Those that lie in a part of the interval.</summary>
    public SlopeSample Inside(SlopeInterval part)
    {
        var first = part.From is { } from ? CountBefore(from) : 0;
        var last = part.To is { } to ? CountBefore(to) : Count;
        return new(part, Drawn[first..last]);
    }

    private int CountBefore(SlopeCut cut)
    {
        var (before, after) = (0, Count);
        while (before < after)
        {
            var middle = (before + after) / 2;
            var order = ExactSlope.Compare(this[middle], cut.Slope);
            (before, after) =
                order < 0 || (order == 0 && cut.IsAfter) ? (middle + 1, after) : (before, middle);
        }

        return before;
    }
}
