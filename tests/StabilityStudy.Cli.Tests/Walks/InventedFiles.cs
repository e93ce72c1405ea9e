using System.Globalization;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>The rows that a laboratory has entered up to some moment, under the headers that start wrote.</summary>
internal sealed class InventedFiles(
    StudyProtocol protocol,
    InventedTruth truth,
    int seed,
    DateOnly firstDay
)
{
    private readonly ImmutableArray<InventedTube> _tubes = InventedCollection.Of(
        protocol,
        firstDay,
        seed
    );

    /// <summary>The last test.</summary>
    public DateTimeOffset End => _tubes.Max(tube => tube.TestedAt);

    /// <summary>The tubes.</summary>
    public ImmutableArray<InventedTube> Tubes => _tubes;

    /// <summary>Writes the rows of what was collected and tested up to a moment behind the headers of the three files.</summary>
    public void Write(string folder, DateTimeOffset upTo)
    {
        var results = new InventedResults(protocol, truth, seed, _tubes);
        Append(
            folder,
            "specimens.csv",
            _tubes
                .Where(tube => tube.CollectedAt <= upTo)
                .DistinctBy(tube => (tube.Specimen.Code, tube.Plan.Code))
                .Select(tube => Specimen(tube, upTo))
        );
        var tested = _tubes.Where(tube => tube.TestedAt <= upTo).ToArray();
        Append(folder, "results.csv", tested.SelectMany(tube => Results(tube, results)));
        Append(
            folder,
            "controls.csv",
            tested
                .SelectMany(tube =>
                    results.AnalytesOf(tube).Select(analyte => (tube.Run, Analyte: analyte, tube))
                )
                .GroupBy(item => (item.Run, item.Analyte.Id))
                .SelectMany(run =>
                    InventedControls.Of(
                        run.First().Analyte,
                        run.Key.Run,
                        run.Min(item => item.tube.TestedAt),
                        results
                    )
                )
        );
    }

    /// <summary>Fields go by the names of the header line.</summary>
    private static void Append(
        string folder,
        string name,
        IEnumerable<Dictionary<string, string>> rows
    )
    {
        var path = Path.Combine(folder, name);
        var header = File.ReadLines(path).First();
        var columns = header.Split(',');
        File.WriteAllLines(
            path,
            rows.Select(row =>
                {
                    Assert.Empty(row.Keys.Except(columns));
                    return string.Join(
                        ',',
                        columns.Select(column => row.GetValueOrDefault(column, ""))
                    );
                })
                .Prepend(header)
        );
    }

    private Dictionary<string, string> Specimen(InventedTube tube, DateTimeOffset upTo)
    {
        var random = SeededValues.Of(seed, "specimen row " + tube.Plan.Code);
        var ofSpecimen = SeededValues.Of(seed, "blood " + tube.Specimen.Code);
        return new()
        {
            ["specimen"] = tube.Specimen.Code,
            ["tube"] = tube.Plan.Code,
            ["subject"] = "P" + tube.Specimen.Code,
            ["group"] = tube.Specimen.Group.Id,
            ["storage"] = tube.Storage.Id,
            ["draw_position"] =
                tube.Plan.DrawPosition?.ToString(CultureInfo.InvariantCulture) ?? "",
            ["collected_at"] = Time(tube.CollectedAt, upTo),
            ["received_at"] = Time(tube.CollectedAt.AddMinutes(4), upTo),
            ["spun_at"] = Time(tube.SpunAt, upTo),
            ["separated_at"] = Time(tube.SeparatedAt, upTo),
            ["frozen_at"] = Time(tube.FrozenAt, upTo),
            ["thawed_at"] = Time(tube.ThawedAt, upTo),
            ["fill_percent"] = Number(random.Between(93, 101)),
            ["inversions"] = Number(random.Between(3, 5)),
            ["hematocrit_percent"] = Number(ofSpecimen.Between(35, 48)),
            ["hemolysis"] = "none",
            ["clot"] = "no",
            ["device"] = "straight needle",
            ["origin"] = "native",
            ["discard_tube"] =
                protocol.Draw?.DiscardTube == DiscardTubeRule.Always ? "citrate" : "none",
            ["drawn_after"] = "nothing",
            ["transport"] = "room temperature",
            ["material"] = "citrate",
        };
    }

    private IEnumerable<Dictionary<string, string>> Results(
        InventedTube tube,
        InventedResults results
    ) =>
        from analyte in results.AnalytesOf(tube)
        from result in results.Of(tube, analyte).Select((text, i) => (Text: text, Replicate: i + 1))
        select new Dictionary<string, string>
        {
            ["specimen"] = tube.Specimen.Code,
            ["tube"] = tube.Plan.Code,
            ["analyte"] = analyte.Id,
            ["time_point"] = tube.Plan.Occasion.ToString(),
            ["replicate"] = result.Replicate.ToString(CultureInfo.InvariantCulture),
            ["tested_at"] = Time(tube.TestedAt, DateTimeOffset.MaxValue),
            ["result"] = result.Text,
            ["unit"] = analyte.Unit,
            ["run"] = tube.Run,
            ["instrument"] = WalkedStudy.Instrument,
            ["lot"] = WalkedStudy.LotOf(protocol, analyte),
            ["calibration"] = "C-1",
            ["operator"] = tube.Day % 2 == 0 ? "LS1" : "LS2",
        };

    /// <summary>A time once it has come.</summary>
    public static string Time(DateTimeOffset? time, DateTimeOffset upTo) =>
        time is { } at && at <= upTo
            ? at.ToString("yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture)
            : "";

    private static string Number(double value) =>
        Math.Round(value).ToString(CultureInfo.InvariantCulture);
}
