using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;

namespace StabilityStudy.Core.Queries;

/// <summary>Every kind of data query that only analyzing a study can raise, each declared beside the check that raises it.</summary>
public static class RaisedKinds
{
    /// <summary>All kinds; a test holds the list against the declarations.</summary>
    public static ImmutableArray<QueryKind> All { get; } =
    [
        .. CellQueries.Kinds,
        .. ConfoundingQueries.Kinds,
        .. ControlQueries.Kinds,
        .. ControlRecordQueries.Kinds,
        .. DrawQueries.Kinds,
        .. ExclusionDateQueries.Kinds,
        .. ExclusionQueries.Kinds,
        .. LevelQueries.Kinds,
        .. NotDrawnQueries.Kinds,
        .. PairQueries.Kinds,
        .. PlanQueries.Kinds,
        .. RatioQueries.Kinds,
        .. RecordQueries.Kinds,
        .. RerunQueries.Kinds,
        .. ResultQueries.Kinds,
        .. ResultValueQueries.Kinds,
        .. SameResultQueries.Kinds,
        .. ScopeQueries.Kinds,
        .. SequenceQueries.Kinds,
        .. SpreadQueries.Kinds,
        .. StudyQueries.Kinds,
        .. TimeQueries.Kinds,
        .. ClockCorrectionQueries.Kinds,
        .. TubeQueries.Kinds,
        .. UnchangedResultQueries.Kinds,
        .. TypingSlipQueries.Kinds,
        .. LockQueries.Kinds,
        .. LookQueries.Kinds,
        .. DocumentedRerun.Kinds,
        .. Replicates.Kinds,
    ];
}
