using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>One specimen with its tubes and its results for one analyte, seen from one storage.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Storage">The storage under study.</param>
/// <param name="Tubes">All its tubes, by code.</param>
/// <param name="Results">All its results for the analyte.</param>
/// <param name="RetestedTubes">Codes of the tubes that were tested at more than one time, for whatever analyte.</param>
internal sealed record Draw(
    string Specimen,
    string Storage,
    ImmutableArray<TubeRow> Tubes,
    ImmutableArray<ResultRow> Results,
    ImmutableHashSet<string> RetestedTubes
)
{
    /// <summary>Tubes of this storage stated at collection not to have been drawn, as far as the statement counts.</summary>
    public ImmutableArray<NotDrawn> NotDrawn { get; init; } = [];

    /// <summary>The statement that the tube of a time point was not drawn; null without one.</summary>
    public NotDrawn? NotDrawnAt(TimePoint timePoint) =>
        NotDrawn.FirstOrDefault(item => item.TimePoint == timePoint);

    /// <summary>The first tube; each draw has one. Subject, group and time of collection are the same for all tubes.</summary>
    public TubeRow First => Tubes[0];

    /// <summary>The tube with a code; null when specimens.csv has none.</summary>
    public TubeRow? Tube(string code)
    {
        foreach (var tube in Tubes)
        {
            if (tube.Tube == code)
            {
                return tube;
            }
        }

        return null;
    }

    /// <summary>
    /// The results at a time, of tubes that waited in the storage under study. A baseline may be shared: without one of
    /// its own the storage takes the draw's other baseline.
    /// </summary>
    public ImmutableArray<ResultRow> ResultsAt(TestOccasion occasion)
    {
        var own = ImmutableArray.CreateBuilder<ResultRow>(1);
        foreach (var row in Results)
        {
            if (row.Occasion == occasion && Tube(row.Tube)?.Storage == Storage)
            {
                own.Add(row);
            }
        }

        return occasion.IsBaseline && own.Count == 0
            ? [.. Results.Where(row => row.Occasion == occasion)]
            : own.DrainToImmutable();
    }
}
