using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>One specimen with its tubes and its results for one analyte, seen from one storage.</summary>
/// <param name="Drawn">The specimen.</param>
/// <param name="Results">All its results for the analyte.</param>
internal sealed record Draw(DrawnSpecimen Drawn, ReadOnlyMemory<ResultRow> Results)
{
    /// <summary>Its code.</summary>
    public string Specimen => Drawn.Rows.Specimen;

    /// <summary>The first tube; each draw has one. Subject, group and time of collection are the same for all tubes.</summary>
    public TubeRow First => Drawn.First;

    /// <summary>The statement that the tube of a time point was not drawn; null without one.</summary>
    public NotDrawn? NotDrawnAt(TimePoint timePoint)
    {
        foreach (var item in Drawn.NotDrawn)
        {
            if (item.TimePoint == timePoint)
            {
                return item;
            }
        }

        return null;
    }

    /// <summary>The tube with a code; null when specimens.csv has none.</summary>
    public TubeRow? Tube(string code) => SpecimenRows.TubeWith(code, Drawn.Tubes.AsSpan());

    /// <summary>
    /// The results at a time, of tubes that waited in the storage under study. A baseline may be shared: without one of
    /// its own the storage takes the draw's other baseline.
    /// </summary>
    public ImmutableArray<ResultRow> ResultsAt(TestOccasion occasion)
    {
        ImmutableArray<ResultRow> own = [];
        ImmutableArray<ResultRow> other = [];
        foreach (var row in Results.Span)
        {
            if (row.Occasion != occasion)
            {
                continue;
            }

            if (Tube(row.Tube)?.Storage == Drawn.Storage)
            {
                own = own.Add(row);
            }
            else if (occasion.IsBaseline)
            {
                other = other.Add(row);
            }
        }

        return own.IsEmpty ? other : own;
    }
}
