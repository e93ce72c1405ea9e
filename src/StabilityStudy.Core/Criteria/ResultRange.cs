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
        var (least, most) = (0, 0);
        foreach (var level in levels)
        {
            var reached = Reaches(level);
            least += reached == true ? 1 : 0;
            most += reached == false ? 0 : 1;
        }

        return least == most ? least : null;
    }

    /// <summary>Whether the value reaches a level; null when the range leaves it open.</summary>
    public bool? Reaches(decimal level) =>
        Lowest >= level ? true
        : Highest is null || (Lowest != Highest && level < Highest) ? null
        : false;
}
