using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Drift;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report;

/// <summary>What a reader of the fitted curves must know: where one does not describe the data, and where one leaves the limit before a supported window ends.</summary>
internal static class DriftRemarks
{
    /// <summary>In place of a time that is read from a curve which does not describe the data.</summary>
    public const string NoTime = "the curve does not fit: no time is read from it";

    public static ImmutableArray<string> Of(StudyAnalysis analysis) =>
        [
            .. analysis.Sequences.SelectMany(sequence =>
                Misfit(analysis, sequence).Concat(Earlier(analysis, sequence))
            ),
        ];

    private static IEnumerable<string> Misfit(StudyAnalysis analysis, Sequence sequence)
    {
        if (!sequence.Drift.Misfits.IsEmpty)
        {
            yield return $"{SequenceNames.Of(analysis, sequence).Title(analysis)}: the curve does not describe the mean change measured at {string.Join(" and ", sequence.Drift.Misfits)}. No window may be read from it.";
        }
    }

    private static IEnumerable<string> Earlier(StudyAnalysis analysis, Sequence sequence)
    {
        if (sequence.Window is not { } window || !sequence.Drift.Misfits.IsEmpty)
        {
            yield break;
        }

        double[] times =
        [
            .. new[] { OfSlopes(sequence.Drift) }
                .Concat(sequence.Drift.Mixed.Where(mixed => mixed.IsDeclared).SelectMany(OfMixed))
                .Where(hours => hours < window.Time.TotalHours)
                .OfType<double>(),
        ];
        if (times.Length > 0)
        {
            yield return $"{SequenceNames.Of(analysis, sequence).Title(analysis)}: a bound of the declared shape leaves the limit at {NumberText.Fixed(times.Min(), 1)} h, before the supported window of {DurationText.FormatWindow(window.Time)} ends. The criteria decide by the results at each time point, not by a curve; it is a reason to consider a shorter window.";
        }
    }

    private static double? OfSlopes(DriftResult drift) =>
        drift.Crossing is CrossingTime.At at ? at.Hours : null;

    private static IEnumerable<double?> OfMixed(MixedDrift mixed) =>
        [mixed.Crossing?.UpperLimitHours, mixed.Crossing?.LowerLimitHours];
}
