using System.Globalization;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the drift over all time points shows and no single time point does, in words.</summary>
internal static class SequenceQueries
{
    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        var standard = protocol
            .Analytes.Single(item => item.Id == sequence.Analyte)
            .StandardWindowOf(sequence.Group);
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
                $"{sequence.Analyte}, group {sequence.Group}, storage {sequence.Storage}: the bound of the drift reaches the allowable bias at {hours:0.0} h, before today's window of {DurationText.Format(standard.Time)} ends."
            ),
            "Look at today's window too: its own results may drift further than is allowed."
        );
    }
}
