using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Analysis;

/// <summary>The data queries that only the finished pairs and conclusions show.</summary>
internal static class StudyQueries
{
    public static IEnumerable<DataQuery> Of(
        StudyInputs inputs,
        ImmutableArray<Sequence> sequences
    ) =>
        [
            .. sequences.SelectMany(sequence => sequence.Cells).SelectMany(cell => OfCell(cell)),
            .. sequences.SelectMany(sequence => Shortfall(sequence)),
            .. sequences.SelectMany(sequence => ModifiedTest(sequence, inputs.Protocol)),
            .. UnusedExclusions(inputs, sequences),
            .. FillNotRecorded(inputs),
        ];

    private static IEnumerable<DataQuery> OfCell(Cell cell) =>
        [.. cell.Pairs.SelectMany(pair => PairQueries.Of(cell.Key, pair)), .. Confounding(cell)];

    private static IEnumerable<DataQuery> Confounding(Cell cell)
    {
        var compared = cell
            .Pairs.Where(pair => pair.Status == PairStatus.Compared)
            .ToImmutableArray();
        foreach (
            var (what, of) in new (string, Func<Measurement, string>)[]
            {
                ("instrument", item => item.Instrument),
                ("lot", item => item.Lot),
                ("calibration", item => item.Calibration),
            }
        )
        {
            var differing = compared
                .Where(pair => of(pair.Baseline!) != of(pair.Delayed!))
                .ToImmutableArray();
            if (!differing.IsEmpty)
            {
                yield return new(
                    what + "-differs-within-pair",
                    Severity.Attention,
                    new("results.csv", differing[0].Delayed!.SourceRow, what),
                    of(differing[0].Delayed!),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{cell.Key}: in {differing.Length} of {compared.Length} pairs baseline and delayed result have another {what}; its effect cannot be told from that of the delay."
                    ),
                    "Test baseline and delayed tubes with the same "
                        + what
                        + ", or show that it makes no difference."
                );
            }
        }
    }

    private static IEnumerable<DataQuery> Shortfall(Sequence sequence) =>
        sequence
            .Cells.Take(1)
            .Where(cell => cell.Disposition.Received < cell.Disposition.Planned)
            .Select(cell => new DataQuery(
                "fewer-specimens-than-planned",
                Severity.Attention,
                new("specimens.csv", null, null),
                cell.Disposition.Received.ToString(CultureInfo.InvariantCulture),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Group {sequence.Group}, storage {sequence.Storage}: {cell.Disposition.Received} specimens of {cell.Disposition.Planned} planned."
                ),
                "Say in a deviation why collection ended early; stopping when the figures look good is not allowed."
            ));

    private static IEnumerable<DataQuery> ModifiedTest(Sequence sequence, StudyProtocol protocol)
    {
        if (sequence.Window is { ManufacturerLimit: ManufacturerStanding.Beyond } window)
        {
            var limit = protocol
                .Analytes.Single(item => item.Id == sequence.Analyte)
                .ManufacturerLimit;
            yield return new(
                "modified-test",
                Severity.Attention,
                new("protocol.toml", null, "manufacturer_limit"),
                limit is null ? "" : DurationText.Format(limit.Time),
                $"Modified test: {DurationText.Format(window.Time)} for {sequence.Analyte}, group {sequence.Group}, goes beyond the manufacturer's limit{(limit is null ? "" : " of " + DurationText.Format(limit.Time) + " (" + limit.Source + ")")}.",
                "Follow the rules for modified tests before this window is used."
            );
        }
    }

    private static IEnumerable<DataQuery> UnusedExclusions(
        StudyInputs inputs,
        ImmutableArray<Sequence> sequences
    ) =>
        inputs
            .Facts.Exclusions.Where(exclusion =>
                !sequences
                    .SelectMany(sequence => sequence.Cells)
                    .Where(cell =>
                        (exclusion.Analyte is null || exclusion.Analyte == cell.Key.Analyte)
                        && (
                            exclusion.TimePoint is null || exclusion.TimePoint == cell.Key.TimePoint
                        )
                    )
                    .SelectMany(cell => cell.Pairs)
                    .Any(pair =>
                        pair.Specimen == exclusion.Specimen && pair.Status == PairStatus.Excluded
                    )
            )
            .Select(exclusion => new DataQuery(
                "exclusion-without-effect",
                Severity.Note,
                new("study.toml", exclusion.Line, "exclusion"),
                exclusion.Specimen,
                $"The exclusion of specimen {exclusion.Specimen} changes nothing: its pairs are left out for another reason already.",
                "Nothing, or correct the specimen, analyte or time point."
            ));

    private static IEnumerable<DataQuery> FillNotRecorded(StudyInputs inputs)
    {
        var missing = inputs.Tubes.Where(tube => tube.FillPercent is null).ToImmutableArray();
        if (inputs.Protocol.Eligibility.FillPercentMinimum is not null && !missing.IsEmpty)
        {
            yield return new(
                "fill-not-recorded",
                Severity.Attention,
                DataFiles.SpecimensAt(missing[0].SourceRow, "fill_percent"),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The fill of {missing.Length} tubes is not recorded, although the protocol asks for a least fill; a short fill prolongs clotting times."
                ),
                "Record the fill of each tube."
            );
        }
    }
}
