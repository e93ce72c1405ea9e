using System.Diagnostics;

namespace StabilityStudy.Core.Criteria;

/// <summary>Where the true value of a result can lie: a number is a point, a result beyond a limit is open to one side.</summary>
/// <param name="Lowest">Lowest value, in the analyte's unit; null when open.</param>
/// <param name="Highest">Highest value; null when open.</param>
internal readonly record struct ResultRange(decimal? Lowest, decimal? Highest)
{
    /// <summary>The range of a result; null for one that is no number.</summary>
    public static ResultRange? Of(ReportedResult? result) =>
        result switch
        {
            MeasuredResult { Value: var value } => new(value, value),
            CensoredResult { Side: CensoredSide.Above, Limit: var limit } => new(limit, null),
            CensoredResult { Side: CensoredSide.Below, Limit: var limit } => new(null, limit),
            CategoryResult or MissingResult or null => null,
            _ => throw new UnreachableException(),
        };

    /// <summary>
    /// How many of the ascending levels the value reaches, a value at a level included; null when the range leaves it open.
    /// A result below a limit is below every level from that limit on.
    /// </summary>
    public int? Reaches(IReadOnlyList<decimal> levels)
    {
        var (lowest, highest) = (Lowest, Highest);
        var least = levels.Count(level => lowest >= level);
        var most =
            lowest == highest ? least : levels.Count(level => highest is null || level < highest);
        return least == most ? least : null;
    }
}
