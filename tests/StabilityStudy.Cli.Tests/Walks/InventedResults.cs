using System.Globalization;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>What was measured: in proportion to the true value, each run with an error of its own and each result with another, half of the stated variance each, rounded as reported.</summary>
internal sealed class InventedResults
{
    private readonly StudyProtocol _protocol;
    private readonly InventedTruth _truth;
    private readonly int _seed;
    private readonly Dictionary<(string Analyte, string Specimen), PlannedNumber?> _parts = [];

    public InventedResults(
        StudyProtocol protocol,
        InventedTruth truth,
        int seed,
        ImmutableArray<InventedTube> tubes
    )
    {
        (_protocol, _truth, _seed) = (protocol, truth, seed);
        foreach (var group in protocol.Groups)
        {
            var specimens = tubes
                .Where(tube => tube.Specimen.Group.Id == group.Id)
                .Select(tube => tube.Specimen.Code)
                .Distinct()
                .ToArray();
            foreach (var analyte in protocol.Analytes.Where(item => IsStudied(item, group.Id)))
            {
                // Whoever comes, comes in any order: the planned numbers are spread over the days.
                var parts = SeededValues
                    .Of(seed, $"parts {analyte.Id} {group.Id}")
                    .Shuffled(
                        analyte
                            .PlannedNumbers.Where(part => part.Group == group.Id)
                            .SelectMany(part =>
                                Enumerable.Repeat<PlannedNumber?>(part, part.Specimens)
                            )
                            .Concat(Enumerable.Repeat<PlannedNumber?>(null, specimens.Length))
                            .Take(specimens.Length)
                    );
                foreach (var (specimen, i) in specimens.Select((code, i) => (code, i)))
                {
                    _parts[(analyte.Id, specimen)] = parts[i];
                }
            }
        }
    }

    public static bool IsStudied(Analyte analyte, string group) =>
        analyte.Groups.IsEmpty || analyte.Groups.Contains(group);

    /// <summary>The analytes for which a tube is tested.</summary>
    public IEnumerable<Analyte> AnalytesOf(InventedTube tube) =>
        _protocol.Analytes.Where(analyte =>
            IsStudied(analyte, tube.Specimen.Group.Id)
            && (
                tube.Plan.Occasion.TimePoint is not { } timePoint
                || (
                    (analyte.Storages.IsEmpty || analyte.Storages.Contains(tube.Storage.Id))
                    && _protocol.TimePointsOf(analyte, tube.Specimen.Group.Id).Contains(timePoint)
                )
            )
        );

    /// <summary>The reported results of a tube for an analyte, one a replicate.</summary>
    public IEnumerable<string> Of(InventedTube tube, Analyte analyte) =>
        Enumerable
            .Range(1, _protocol.Replicates)
            .Select(replicate =>
                analyte.IsQualitative
                    ? Class(tube, analyte)
                    : Reported(
                        analyte,
                        Measured(
                            analyte,
                            Value(tube, analyte),
                            tube.Run,
                            $"{tube.Plan.Code} {tube.Plan.Occasion} {replicate}"
                        )
                    )
            );

    /// <summary>A value as a run measures it.</summary>
    public double Measured(Analyte analyte, double value, string run, string result)
    {
        var half = (double)(analyte.BetweenRunCvPercent ?? 2) / Math.Sqrt(2);
        return value
            * Math.Exp(
                (
                    (half * SeededValues.Of(_seed, $"run {analyte.Id} {run}").Normal())
                    + (
                        half
                        * SeededValues.Of(_seed, $"result {analyte.Id} {run} {result}").Normal()
                    )
                ) / 100
            );
    }

    /// <summary>A number with the decimals of the analyte, or that it lies beyond what the method measures.</summary>
    public static string Reported(Analyte analyte, double value)
    {
        var number = Math.Round((decimal)value, analyte.Decimals, MidpointRounding.AwayFromZero);
        return analyte.MeasuringInterval switch
        {
            { } interval when number < interval.Lowest => "<" + Text(interval.Lowest),
            { } interval when number > interval.Highest => ">" + Text(interval.Highest),
            _ => Text(number),
        };

        string Text(decimal shown) =>
            shown.ToString("F" + analyte.Decimals, CultureInfo.InvariantCulture);
    }

    private double Value(InventedTube tube, Analyte analyte)
    {
        var (specimen, group) = (tube.Specimen.Code, tube.Specimen.Group);
        var range = analyte.PlannedRanges.First(item => item.Group == group.Id);
        var (lowest, highest) = _parts[(analyte.Id, specimen)] is { } part
            ? ((double)part.Lowest, (double)part.Highest)
            : ((double)range.Lowest, (double)range.Highest);
        var random = SeededValues.Of(_seed, $"specimen {analyte.Id} {specimen}");
        var atFirst = lowest * Math.Pow(highest / lowest, random.Between(0, 1));
        var deviation = random.Normal();
        if (tube.Plan.Occasion.TimePoint is not { } timePoint)
        {
            return atFirst;
        }

        var sd =
            analyte
                .ExpectedChanges.FirstOrDefault(change =>
                    change.Group == group.Id && change.TimePoint == timePoint
                )
                ?.SpecimenSdPercent
            ?? InventedTruth.UsualSdPercent;
        return atFirst
            * (1 + ((_truth.ChangePercent(analyte, group) + ((double)sd * deviation)) / 100));
    }

    /// <summary>Known positives are positive at first, others negative, and some turn while they wait.</summary>
    private string Class(InventedTube tube, Analyte analyte)
    {
        var isPositive = tube.Specimen.Group.Id == "positive";
        var turns =
            !tube.Plan.Occasion.IsBaseline
            && SeededValues.Of(_seed, $"class {tube.Specimen.Code}").Between(0, 1)
                < _truth.TurnedShare;
        return isPositive != turns ? analyte.Categories[^1] : analyte.Categories[0];
    }
}
