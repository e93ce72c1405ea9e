using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Whether each international normalized ratio is that of its prothrombin time, (PT/mean normal PT)^ISI with the values
/// of the reagent lot, rounded to its decimals. One reporting step of difference may come from the rounding of the PT. A result
/// beyond a limit stands for all values there, and disagrees where none of them fits.
/// </summary>
internal static class RatioQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind RatioDisagrees = Kinds.Add("ratio-disagrees", QueryRank.NotAsPlanned, "a normalized ratio does not agree with its prothrombin time, the sensitivity index and the mean normal time", "check the figures of the lot and the calculation of the analyzer");
    internal static readonly QueryKind IsiNotRecorded = Kinds.Add("isi-not-recorded", QueryRank.NotRecorded, "the sensitivity index or mean normal time of a lot is not stated, so ratios were not computed again", "add isi and mean_normal_time to the lot");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        inputs
            .Protocol.Analytes.Where(analyte => analyte.RatioOf is not null)
            .SelectMany(analyte => OfRatio(analyte, inputs));

    private static IEnumerable<DataQuery> OfRatio(Analyte ratio, StudyInputs inputs)
    {
        var lots = inputs.Facts.Lots.DistinctBy(lot => lot.Id).ToDictionary(lot => lot.Id);
        var times = inputs
            .Results.Where(row => row.Analyte == ratio.RatioOf)
            .ToLookup(row => (row.Specimen, row.Tube, row.Occasion, row.Replicate));
        var tested = inputs
            .Results.Where(row => row.Analyte == ratio.Id && Span.Of(row.Result) is not null)
            .SelectMany(row =>
                times[(row.Specimen, row.Tube, row.Occasion, row.Replicate)]
                    .Where(time => Span.Of(time.Result) is { High: > 0 })
                    .Select(time => (Ratio: row, Time: time, Lot: lots.GetValueOrDefault(time.Lot)))
            )
            .ToImmutableArray();
        var unknown = tested.Where(item => !IsComplete(item.Lot)).ToImmutableArray();
        if (!unknown.IsEmpty)
        {
            var names = unknown
                .Select(item => item.Time.Lot.Length > 0 ? item.Time.Lot : "(none recorded)")
                .Distinct()
                .Order(StringComparer.Ordinal);
            yield return new(
                IsiNotRecorded,
                new("study.toml", null, "lot"),
                "",
                $"{ratio.Id} could not be recomputed from {ratio.RatioOf}: isi or mean_normal_time is not stated for lot {ControlDoubts.Names([.. names])}.",
                "State both for each lot of thromboplastin."
            );
        }

        var step = (decimal)Math.Pow(10, -ratio.Decimals);
        var disagreeing = tested
            .Where(item =>
                item.Lot is { Isi: { } isi, MeanNormalTime: > 0 and { } normal }
                && Span.Of(item.Ratio.Result) is { } stated
                && Span.Of(item.Time.Result) is { } time
                && (
                    stated.Low > Recomputed(time.High, normal, isi, ratio.Decimals) + step
                    || stated.High < Recomputed(time.Low, normal, isi, ratio.Decimals) - step
                )
            )
            .Select(item => item.Ratio)
            .ToImmutableArray();
        if (!disagreeing.IsEmpty)
        {
            yield return new(
                RatioDisagrees,
                DataFiles.ResultsAt(disagreeing.Min(row => row.SourceRow), "result"),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{ratio.Id}: {disagreeing.Length} results differ by more than {step} from ({ratio.RatioOf}/mean normal time)^ISI of their lot: specimens {ControlDoubts.Names([.. disagreeing.Select(row => $"{row.Specimen} at {row.Occasion}")])}."
                ),
                "Check ISI and mean normal time of the lot, and the results for transcription errors."
            );
        }
    }

    private static bool IsComplete(Lot? lot) => lot is { Isi: > 0, MeanNormalTime: > 0 };

    /// <summary>A ratio too large for a decimal cannot agree with any result.</summary>
    private static decimal Recomputed(decimal time, decimal normal, decimal isi, int decimals)
    {
        var ratio =
            time == Span.Unbounded
                ? double.PositiveInfinity
                : Math.Pow((double)(time / normal), (double)isi);
        return ratio < 1e9
            ? Math.Round((decimal)ratio, decimals, MidpointRounding.AwayFromZero)
            : Span.Unbounded;
    }

    /// <summary>Between what values a result lies.</summary>
    private sealed record Span(decimal Low, decimal High)
    {
        public const decimal Unbounded = decimal.MaxValue / 2;

        /// <summary>The span; null for a result that is no number.</summary>
        public static Span? Of(ReportedResult result) =>
            result switch
            {
                MeasuredResult measured => new(measured.Value, measured.Value),
                CensoredResult { Side: CensoredSide.Below } below => new(0, below.Limit),
                CensoredResult above => new(above.Limit, Unbounded),
                _ => null,
            };
    }
}
