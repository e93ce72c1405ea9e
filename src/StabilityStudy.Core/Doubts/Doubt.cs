using System.Collections.Immutable;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Doubts;

/// <summary>What keeps a time point from being supported although its criteria are met.</summary>
internal static class Doubt
{
    /// <summary>Every doubt about a time point, from its pairs.</summary>
    public static ImmutableArray<VerdictReason> Of(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol
    ) => LeftOutShare.Of(pairs, protocol.LeftOutPercentMaximum) is { } leftOut ? [leftOut] : [];

    /// <summary>What the criteria conclude, unless a doubt keeps it from being supported.</summary>
    public static Conclusion Conclude(
        Conclusion byCriteria,
        ImmutableArray<VerdictReason> doubts
    ) =>
        byCriteria == Conclusion.Supported && !doubts.IsEmpty
            ? Conclusion.Inconclusive
            : byCriteria;
}
