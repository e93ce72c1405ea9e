using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>Makes the decision that is signed from what was asked for and what the report concludes.</summary>
internal static class DecisionMaking
{
    private const string None = "none";

    /// <summary>The decision, or why there is none.</summary>
    /// <param name="analysis">The study, computed again.</param>
    /// <param name="request">What is asked for.</param>
    /// <param name="earlier">The decision recorded before; null without one.</param>
    public static (ApproverDecision? Decision, string? Why) Of(
        StudyAnalysis analysis,
        DecisionRequest request,
        RecordedDecision? earlier
    )
    {
        var rows = ConcludedWindow.Of(analysis);
        var named = request.Windows.Concat(request.Interim).Concat(request.RowConditions);
        if (named.FirstOrDefault(item => RowNames.Find(item.Row, rows) is null) is { } unknown)
        {
            return (
                null,
                $"\"{unknown.Row}\" names no row of the conclusions, or more than one. The rows: {string.Join(", ", rows.Select(row => RowNames.Of(row, rows)))}."
            );
        }

        if ((Twice(request.Windows, rows) ?? Twice(request.Interim, rows)) is { } twice)
        {
            return (null, $"The row {twice} is given two windows.");
        }

        if (
            request
                .Windows.Concat(request.Interim)
                .FirstOrDefault(item =>
                    item.Text != None && !DurationText.TryParseWindow(item.Text, out _)
                ) is
            { } unread
        )
        {
            return (
                null,
                $"\"{unread.Text}\" is no window: write \"4 h\", \"7 h 30 min\" or \"none\"."
            );
        }

        if (
            !request.Approves
            && (named.Any() || !request.Conditions.IsEmpty || request.Effective is not null)
        )
        {
            return (
                null,
                "What is declined has no windows, conditions or first day in force. To approve some rows, approve and give the others the window \"none\"."
            );
        }

        if (earlier is not null && request.Again is null)
        {
            return (
                null,
                $"A decision on this study was signed on {earlier.At.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture)} by {earlier.By}: {earlier.Words}. To decide again, say why with --again; the earlier decision and the reason become part of your signature."
            );
        }

        ImmutableArray<string> conditions =
        [
            .. request
                .Conditions.Concat(request.RowConditions.Select(item => item.Text))
                .Distinct(),
        ];
        ImmutableArray<WindowDecision> windows =
        [
            .. rows.Select(row => Decided(row, rows, request, conditions)),
        ];
        return (
            new ApproverDecision(
                !request.Approves ? DecisionKind.Decline
                    : windows.Any(window => window.IsLess) ? DecisionKind.Conditions
                    : DecisionKind.Approve,
                request.Reason
            )
            {
                Windows = windows,
                Conditions = conditions,
                Effective = request.Effective,
                Review = request.Review,
                Earlier = earlier is null
                    ? null
                    : new(earlier.At, earlier.By, earlier.Words, request.Again ?? ""),
            },
            null
        );
    }

    private static WindowDecision Decided(
        ConcludedWindow row,
        ImmutableArray<ConcludedWindow> rows,
        DecisionRequest request,
        ImmutableArray<string> conditions
    )
    {
        var approved =
            !request.Approves ? null
            : TextOf(request.Windows) is { } given ? Window(given)
            : row.Supported;
        var ofRow = request
            .RowConditions.Where(item => RowNames.Find(item.Row, rows) == row)
            .Select(item => item.Text);
        var interim = TextOf(request.Interim) is { } shorter ? Window(shorter) : null;
        return new(
            row,
            approved,
            interim,
            (approved ?? interim) is null
                ? []
                :
                [
                    .. request
                        .Conditions.Concat(ofRow)
                        .Select(text => conditions.IndexOf(text) + 1)
                        .Distinct()
                        .Order(),
                ]
        );

        string? TextOf(ImmutableArray<RowText> texts) =>
            texts.FirstOrDefault(item => RowNames.Find(item.Row, rows) == row)?.Text;
    }

    private static TimeSpan? Window(string text) =>
        text != None && DurationText.TryParseWindow(text, out var window) ? window : null;

    private static string? Twice(
        ImmutableArray<RowText> texts,
        ImmutableArray<ConcludedWindow> rows
    ) =>
        texts
            .GroupBy(item => RowNames.Find(item.Row, rows))
            .FirstOrDefault(group => group.Count() > 1)
            ?.First()
            .Row;
}
