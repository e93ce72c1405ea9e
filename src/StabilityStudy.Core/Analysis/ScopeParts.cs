using StabilityStudy.Core.Controls;

namespace StabilityStudy.Core.Analysis;

/// <summary>Concludes each instrument or site of a sequence on its own specimens.</summary>
internal static class ScopeParts
{
    /// <summary>Each instrument or site that has a specimen with a valid baseline; empty where there is only one.</summary>
    /// <param name="cells">The time points with all specimens.</param>
    /// <param name="context">What they are judged by.</param>
    /// <param name="controls">The control results of the analyte.</param>
    /// <param name="doubtsAt">What the way of collecting does not allow to conclude at a time point: it holds for each part as for all.</param>
    public static ImmutableArray<ScopePart> Of(
        ImmutableArray<AssembledCell> cells,
        PairContext context,
        ImmutableArray<ControlRow> controls,
        Func<TimePoint, IEnumerable<VerdictReason>> doubtsAt
    )
    {
        var scope = context.Scope;
        var codes = scope.CodesOf(cells.SelectMany(cell => cell.Pairs));
        return codes.Length < 2
            ? []
            :
            [
                .. codes.Select(code =>
                    Conclude(
                        code,
                        [
                            .. cells.Select(cell =>
                                cell.Only(pair => scope.CodeOf(pair) == code, controls)
                            ),
                        ],
                        context,
                        controls,
                        doubtsAt
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
        return open.IsEmpty ? [] : [new PartsNotSupportedReason(parts[0].Kind, open)];
    }

    private static ScopePart Conclude(
        string code,
        ImmutableArray<AssembledCell> cells,
        PairContext context,
        ImmutableArray<ControlRow> controls,
        Func<TimePoint, IEnumerable<VerdictReason>> doubtsAt
    )
    {
        var judged = JudgedCell.All(cells, context, controls, doubtsAt);
        var conclusions = CellEvaluation.InSequence([.. judged.Select(cell => cell.Own)]);
        return new(
            context.Scope.Kind,
            code,
            SupportedWindow.Longest(
                cells.Select((cell, i) => (conclusions[i], cell.TimePoint, cell.Pairs)),
                context
            ),
            [.. judged.Select((cell, i) => cell.ConcludedOfPart(conclusions[i]))]
        );
    }
}
