using StabilityStudy.Core.Drift;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Drift;

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
        if (First(sequence) is { } first)
        {
            yield return $"{SequenceNames.Of(analysis, sequence).Title(analysis)}: a bound of {first.Curve} leaves the limit at {DurationText.FormatComputed(first.Hours)} from {OriginWords.Start(analysis.Protocol.TimeOrigin)}, before the supported window of {DurationText.FormatWindow(sequence.Window!.Time)} ends. The criteria decide by the results at each time point, not by a curve; it is a reason to consider a shorter window.";
        }
    }

    /// <summary>The first time at which a bound of the declared shape leaves the limit; null where none does before the supported window ends.</summary>
    public static Leaving? First(Sequence sequence) =>
        sequence.Window is { } window && sequence.Drift.Misfits.IsEmpty
            ? OfMixed(sequence.Drift)
                .Append(OfSlopes(sequence.Drift))
                .OfType<Leaving>()
                .Where(leaving => leaving.Hours < window.Time.TotalHours)
                .MinBy(leaving => leaving.Hours)
            : null;

    private static Leaving? OfSlopes(DriftResult drift) =>
        drift.Crossing is CrossingTime.At at ? new Leaving("the fitted curve", at.Hours) : null;

    private static IEnumerable<Leaving> OfMixed(DriftResult drift) =>
        drift
            .Mixed.Where(mixed => mixed.IsDeclared)
            .SelectMany(mixed =>
                new[] { mixed.Crossing?.UpperLimitHours, mixed.Crossing?.LowerLimitHours }
            )
            .OfType<double>()
            .Select(hours => new Leaving("the mixed model", hours));

    /// <summary>When a bound of a curve leaves the limit.</summary>
    /// <param name="Curve">The curve in words.</param>
    /// <param name="Hours">Hours since collection.</param>
    internal sealed record Leaving(string Curve, double Hours);
}
