using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>The conclusions of a study and the counts behind them, a line a cell.</summary>
internal static class ConclusionText
{
    /// <summary>With the deciding figures, to four decimals.</summary>
    public static string WithFigures(StudyAnalysis analysis) => Write(analysis, withFigures: true);

    /// <summary>Conclusions and counts only, which a change of unit leaves alone.</summary>
    public static string WithoutFigures(StudyAnalysis analysis) =>
        Write(analysis, withFigures: false);

    private static string Write(StudyAnalysis analysis, bool withFigures)
    {
        var text = new StringBuilder();
        foreach (var sequence in analysis.Sequences)
        {
            var window = sequence.Window is { } found
                ? $"{found.Time:c}, manufacturer's limit: {found.ManufacturerLimit}"
                : "none";
            text.Append(
                CultureInfo.InvariantCulture,
                $"{sequence.Analyte} · {sequence.Group} · {sequence.Storage}: window {window}\n"
            );
            foreach (var cell in sequence.Cells)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"  {cell.Key.TimePoint}: {cell.Conclusion} (alone {cell.OwnConclusion})\n"
                );
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"    {string.Join(", ", cell.Disposition.Counts.Where(item => item.Count > 0).Select(item => FormattableString.Invariant($"{item.Status} {item.Count}")))}\n"
                );
                foreach (var result in cell.Criteria)
                {
                    text.Append(
                        CultureInfo.InvariantCulture,
                        $"    {result.Criterion}: {result.Verdict}, {Figures(result, withFigures)}; {string.Join(", ", result.Reasons.Select(reason => reason.Name()))}\n"
                    );
                }

                foreach (var line in cell.Robustness)
                {
                    text.Append(
                        CultureInfo.InvariantCulture,
                        $"    {line.Question.Kind} {line.Question.Count}: {line.Conclusion}\n"
                    );
                }
            }
        }

        return text.ToString();
    }

    private static string Figures(CriterionResult result, bool withFigures) =>
        result switch
        {
            BiasResult { Mean.Value: { } mean } bias when withFigures =>
                FormattableString.Invariant(
                    $"mean {mean.Mean:0.0000} ({mean.Lower:0.0000} to {mean.Upper:0.0000}) by {mean.DecidedBy}, allowed {bias.LowerLimit:0.0000} to {bias.UpperLimit:0.0000}"
                ),
            BiasResult { Mean.Value: { } mean } => FormattableString.Invariant(
                $"{mean.BySpecimen.Count} specimens on {mean.Over(IntervalSource.CollectionDays)?.Clusters ?? 1} days"
            ),
            IndividualResult { Agreement: var count, Bounds.Value: { } bounds } when withFigures =>
                FormattableString.Invariant(
                    $"{count.Inside} of {count.Counted} inside, bounds {bounds.OneSidedLower:0.0000} and {bounds.OneSidedUpper:0.0000}"
                ),
            IndividualResult { Agreement: var count } => FormattableString.Invariant(
                $"{count.Inside} of {count.Counted} inside, outside: {string.Join(' ', count.OutsideSpecimens)}"
            ),
            _ => "no figures",
        };
}
