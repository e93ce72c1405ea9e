using System.Globalization;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the drift over all time points shows and no single time point does, in words.</summary>
internal static class SequenceQueries
{
    /// <summary>From here on a time reads better in days.</summary>
    private const double HoursInDays = 72;

    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        var standard = protocol
            .Analytes.Single(item => item.Id == sequence.Analyte)
            .StandardWindowOf(sequence.Group);
        return [.. Shorter(sequence, standard), .. Drifting(sequence, standard)];
    }

    private static IEnumerable<DataQuery> Shorter(Sequence sequence, WindowRule standard)
    {
        if (sequence.Window is not { } window || window.Time >= standard.Time)
        {
            yield break;
        }

        yield return new(
            "support-below-standard-window",
            Severity.Attention,
            new(StudyFileNames.Usual.Results, null, null),
            "",
            $"{sequence.Analyte}, group {sequence.Group}, storage {sequence.Storage}: supported to {DurationText.FormatWindow(window.Time)} only, less than today's window of {DurationText.Format(standard.Time)}.",
            "Look at today's window: this study does not confirm it."
        );
    }

    private static IEnumerable<DataQuery> Drifting(Sequence sequence, WindowRule standard)
    {
        var hours = sequence.Drift.Crossing switch
        {
            CrossingTime.At at => at.Hours,
            CrossingTime.AlreadyOutside => 0,
            _ => double.PositiveInfinity,
        };
        if (hours >= standard.Time.TotalHours)
        {
            yield break;
        }

        yield return new(
            "drift-crosses-before-standard-window",
            Severity.Attention,
            new(StudyFileNames.Usual.Results, null, null),
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{sequence.Analyte}, group {sequence.Group}, storage {sequence.Storage}: the bound of the drift reaches the allowable bias at {(hours >= HoursInDays ? string.Create(CultureInfo.InvariantCulture, $"{hours / 24:0.0} d") : string.Create(CultureInfo.InvariantCulture, $"{hours:0.0} h"))}, before today's window of {DurationText.Format(standard.Time)} ends."
            ),
            "Look at today's window too: its own results may drift further than is allowed."
        );
    }
}
