using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Estimates;

/// <summary>The pairs of a cell in one reading.</summary>
/// <param name="Kind">Which reading.</param>
/// <param name="Pairs">Every pair that it holds, the measured ones with the values of this reading.</param>
/// <param name="Data">The compared ones as numbers.</param>
internal sealed record PairReading(
    ChangeReading Kind,
    ImmutableArray<PairRecord> Pairs,
    CellData Data
)
{
    /// <summary>The same pairs before their values at collection were computed; null where none were.</summary>
    public PairReading? FromBaseline { get; init; }

    /// <summary>Specimens whose value at collection is not above zero: a percentage of it means nothing, and they count as outside.</summary>
    public ImmutableArray<string> WithoutValueAtCollection { get; init; } = [];

    /// <summary>Specimens that the reading leaves out because no bridging plasma was tested in both of their runs.</summary>
    public ImmutableArray<string> WithoutBridging { get; init; } = [];

    private ImmutableArray<int> _persons;

    /// <summary>The person of each pair, numbered from 0 on; found at the first question.</summary>
    public ImmutableArray<int> Persons
    {
        get
        {
            if (_persons.IsDefault)
            {
                _persons = SharedErrors.PersonsOf(Pairs);
            }

            return _persons;
        }
        init => _persons = value;
    }

    private ImmutableArray<(Allowance Allowance, double? Level, AllowanceUse Use)> _uses = [];

    /// <summary>Which share of an allowance each measured pair uses; computed at the first question.</summary>
    /// <param name="allowance">The allowance.</param>
    /// <param name="context">The imprecision of one result.</param>
    /// <param name="level">One-sided level of the shift by runs; null for none.</param>
    public AllowanceUse UseOf(Allowance allowance, CellContext context, double? level)
    {
        foreach (var known in _uses)
        {
            if (known.Allowance == allowance && known.Level == level)
            {
                return known.Use;
            }
        }

        var use = AllowanceUse.Of(this, allowance, context, level);
        _uses = _uses.Add((allowance, level, use));
        return use;
    }

    /// <summary>This reading, with what was found of the same measured pairs when others beside them stood otherwise.</summary>
    private PairReading Knowing(ImmutableArray<PairReading> known)
    {
        var same = known.FirstOrDefault(reading => reading.Kind == Kind);
        return
            same is not null
            && ReferenceEquals(same.Data, Data)
            && ReferenceEquals(same.FromBaseline?.Data, FromBaseline?.Data)
            && same.WithoutValueAtCollection.IsEmpty
            && WithoutValueAtCollection.IsEmpty
            ? this with
            {
                _uses = same._uses,
            }
            : this;
    }

    /// <summary>The readings that a cell calls for; as measured is the first.</summary>
    /// <param name="pairs">Every pair of the cell.</param>
    /// <param name="context">What they are read against.</param>
    /// <param name="known">The readings of the same specimens before some pairs were changed, from which those that were not are taken.</param>
    public static ImmutableArray<PairReading> All(
        ImmutableArray<PairRecord> pairs,
        CellContext context,
        ImmutableArray<PairReading> known
    )
    {
        ImmutableArray<PairReading> fromBaseline =
        [
            new PairReading(
                ChangeReading.AsMeasured,
                pairs,
                known.FirstOrDefault()?.Data.IfOf(pairs) ?? context.DataOf(pairs)
            )
            {
                Persons = known.IsEmpty ? default : known[0].Persons,
            }.Knowing(known),
            .. context.Bridging?.Reading(pairs, context) is { } bridged
                ? [bridged]
                : (PairReading[])[],
        ];
        return context.IsSinceCollection
            ?
            [
                .. fromBaseline,
                .. fromBaseline.Select(reading =>
                    ValueAtCollection.Reading(reading, context, known).Knowing(known)
                ),
            ]
            : fromBaseline;
    }

    /// <summary>The pair at a place with its value at collection, where it had the same results before that was computed; null otherwise.</summary>
    public PairRecord? ValueOfSame(PairRecord pair, int place) =>
        FromBaseline is { } before
        && place < before.Pairs.Length
        && ReferenceEquals(before.Pairs[place], pair)
        && !ReferenceEquals(Pairs[place], pair)
            ? Pairs[place]
            : null;

    /// <summary>Without some compared pairs, by which means and lines go; counts keep them.</summary>
    public PairReading WithoutPairs(Func<PairRecord, bool> leaveOut) =>
        this with
        {
            Data = Data.WithoutPairs(leaveOut),
        };
}
