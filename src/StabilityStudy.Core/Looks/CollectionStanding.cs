using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Looks;

/// <summary>How far the collection of the planned specimens is. The zero member is the cautious answer.</summary>
public enum CollectionState
{
    /// <summary>Specimens are still to come: nothing is concluded, and only counts are shown unless somebody insists.</summary>
    Incomplete,

    /// <summary>Fewer than planned, and study.toml states that collection has ended.</summary>
    EndedEarly,

    /// <summary>As many as planned.</summary>
    Complete,
}

/// <summary>The collection of one analyte, patient group and storage.</summary>
/// <param name="Planned">The planned number.</param>
/// <param name="Usable">Specimens received that have a valid baseline.</param>
/// <param name="State">How far that is.</param>
public sealed record CollectionStanding(int Planned, int Usable, CollectionState State)
{
    /// <summary>The standing of a cell's specimens.</summary>
    /// <param name="pairs">The specimens of any of its time points; the baseline is the same at all.</param>
    /// <param name="planned">The planned number.</param>
    /// <param name="hasEnded">Whether the end of the collection is stated.</param>
    internal static CollectionStanding Of(
        ImmutableArray<PairRecord> pairs,
        int planned,
        bool hasEnded
    )
    {
        var usable = pairs.Count(pair => pair.HasValidBaseline);
        return new(
            planned,
            usable,
            usable >= planned ? CollectionState.Complete
                : hasEnded ? CollectionState.EndedEarly
                : CollectionState.Incomplete
        );
    }

    /// <summary>The standing of a sequence. Where the number is planned for each instrument, all together are as far as the one that is least far.</summary>
    internal static CollectionStanding Of(ImmutableArray<PairRecord> pairs, PairContext context)
    {
        var each = context
            .Numbers.Instruments.Select(instrument =>
                Of(
                    [.. pairs.Where(pair => pair.Instrument == instrument)],
                    context.Group.Specimens,
                    context.HasEnded
                )
            )
            .ToImmutableArray();
        return each.IsEmpty
            ? Of(pairs, context.Group.Specimens, context.HasEnded)
            : new(
                each.Sum(part => part.Planned),
                each.Sum(part => part.Usable),
                each.Min(part => part.State)
            );
    }

    /// <summary>Whether study.toml states the end of the collection, and no specimen was collected after that day.</summary>
    internal static bool HasEnded(StudyInputs inputs) =>
        inputs.Facts.EndedEarly is { } end && !IsContradicted(end, inputs);

    /// <summary>Whether a specimen was collected after the day of the stated end.</summary>
    internal static bool IsContradicted(EndedEarly end, StudyInputs inputs) =>
        inputs.Tubes.Any(tube => DateOnly.FromDateTime(tube.CollectedAt.DateTime) > end.On);
}
