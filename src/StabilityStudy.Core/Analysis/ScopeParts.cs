using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Doubts;

namespace StabilityStudy.Core.Analysis;

/// <summary>Concludes each instrument of a sequence on its own specimens.</summary>
internal static class ScopeParts
{
    /// <summary>Each instrument on which a specimen with a valid baseline was tested; empty where there is only one.</summary>
    /// <param name="cells">The time points with all specimens.</param>
    /// <param name="context">What they are judged by.</param>
    /// <param name="controls">The control results of the analyte.</param>
    public static ImmutableArray<ScopePart> Of(
        ImmutableArray<AssembledCell> cells,
        PairContext context,
        ImmutableArray<ControlRow> controls
    )
    {
        var valid = cells
            .SelectMany(cell => cell.Pairs)
            .Where(pair => pair.HasValidBaseline)
            .ToImmutableArray();
        ImmutableArray<string> codes =
        [
            .. valid.Select(pair => pair.Instrument).Distinct().Order(StringComparer.Ordinal),
        ];
        if (codes.Length < 2)
        {
            return [];
        }

        var unknown = valid
            .Where(pair => pair.Instrument.Length == 0)
            .DistinctBy(pair => pair.Specimen)
            .Count();
        return
        [
            .. codes.Select(code =>
                Conclude(
                    code,
                    [
                        .. cells.Select(cell =>
                            cell.Only(pair => pair.Instrument == code, controls)
                                .Doubted(OfAll(cell, context.Protocol, unknown))
                                .Doubted(OfPart(cell, code))
                        ),
                    ],
                    context,
                    controls
                )
            ),
        ];
    }

    /// <summary>That not every one of them supports a time point on its own; none where each does, or there is only one.</summary>
    public static IEnumerable<VerdictReason> DoubtsAt(
        TimePoint timePoint,
        ImmutableArray<ScopePart> parts
    )
    {
        ImmutableArray<PartStanding> open =
        [
            .. from part in parts
            from item in part.TimePoints
            where item.TimePoint == timePoint && item.OwnConclusion != Conclusion.Supported
            select new PartStanding(part.Code, item.OwnConclusion),
        ];
        return open.IsEmpty ? [] : [new PartsNotSupportedReason(open)];
    }

    /// <summary>What holds for no instrument alone: specimens that belong to none, and how many were left out of all.</summary>
    private static IEnumerable<VerdictReason> OfAll(
        AssembledCell cell,
        StudyProtocol protocol,
        int unknown
    ) =>
        [
            .. unknown > 0
                ? [new InstrumentNotRecordedReason(unknown)]
                : Array.Empty<VerdictReason>(),
            .. LeftOutShare.Of(cell.Pairs, protocol.LeftOutPercentMaximum) is { } leftOut
                ? [leftOut]
                : Array.Empty<VerdictReason>(),
        ];

    private static IEnumerable<VerdictReason> OfPart(AssembledCell cell, string code)
    {
        ImmutableArray<string> crossed =
        [
            .. cell
                .Pairs.Where(pair =>
                    pair.CountsForAgreement
                    && pair.IsOnTwoInstruments
                    && (pair.Instrument == code || pair.Delayed!.Instrument == code)
                )
                .Select(pair => pair.Specimen),
        ];
        return crossed.IsEmpty ? [] : [new TestedOnTwoInstrumentsReason(crossed)];
    }

    private static ScopePart Conclude(
        string code,
        ImmutableArray<AssembledCell> cells,
        PairContext context,
        ImmutableArray<ControlRow> controls
    )
    {
        var judged = JudgedCell.All(cells, context, controls);
        var conclusions = CellEvaluation.InSequence([.. judged.Select(cell => cell.Own)]);
        return new(
            code,
            SupportedWindow.Longest(
                cells.Select((cell, i) => (conclusions[i], cell.TimePoint, cell.Pairs)),
                context
            ),
            [.. judged.Select((cell, i) => cell.ConcludedOfPart(conclusions[i]))]
        );
    }
}
