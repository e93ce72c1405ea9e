using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>
/// The chance that plan states, against how often whole studies are supported whose files are drawn by other code, row by row as a laboratory enters them, and read, paired and judged as every study is:
/// a clotting time on heparin with a mean, single specimens, decision levels and sides of them. As plan supposes, no bridging plasma is tested: it makes support rarer.
/// </summary>
[Trait("lane", "slow")]
public sealed class PlannedFrequencyTests : IDisposable
{
    private const string Name = "aptt-ufh-whole-blood";

    /// <summary>Studies for the chance of the plan, and for fifty of them one from files, which takes much longer.</summary>
    private static readonly int s_planned = LongProof.Setting("PLANNED_STUDIES", 300);
    private static readonly int s_studies = s_planned / 50;

    private readonly StudyCopy _copy = StudyCopy.CreateOf("");

    public void Dispose() => _copy.Dispose();

    /// <summary>No change, and the change that was published for 2 h.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public async Task The_stated_chance_is_how_often_such_studies_are_supported(int share)
    {
        var folder = _copy.At("walked");
        await Run.Of([
            "start",
            folder,
            "--protocol",
            Name,
            "--facility",
            "Invented laboratory",
            "--time-zone",
            WalkedStudy.TimeZone,
            "--person",
            "LS1=Lab Scientist One, lab scientist",
            "--person",
            "LS2=Lab Scientist Two, lab scientist",
            "--instrument",
            WalkedStudy.Instrument + "=Invented analyzer",
            "--lot",
            "R-1=reagent, aPTT, 2028-12-31",
        ]);
        Assert.True(
            ProtocolReader
                .Read(
                    await File.ReadAllBytesAsync(
                        Path.Combine(folder, "protocol.toml"),
                        TestContext.Current.CancellationToken
                    ),
                    Name
                )
                .TryGet(out var protocol)
        );
        var point = StudyPlanner.Of(protocol, new(s_planned, 1)).Rows[0].TimePoints[1];
        var chance = point.Chances.Single(item => item.ShareOfExpected == share);
        var truth = new InventedTruth((_, _) => chance.MeanChangePercent, 0);

        var supported = Enumerable
            .Range(1, s_studies)
            .Count(seed => IsSupported(folder, protocol, truth, seed, point.TimePoint));

        var (p, q) = (chance.Together, (double)supported / s_studies);
        var pooled = (p.Accepted + supported) / (double)(p.Studies + s_studies);
        var error = Math.Sqrt(pooled * (1 - pooled) * ((1.0 / p.Studies) + (1.0 / s_studies)));
        Assert.InRange(q, p.Probability - (3 * error), p.Probability + (3 * error));
    }

    private static bool IsSupported(
        string folder,
        StudyProtocol protocol,
        InventedTruth truth,
        int seed,
        TimePoint timePoint
    )
    {
        new InventedFiles(protocol, truth, seed, new DateOnly(2026, 3, 2)).Write(
            folder,
            DateTimeOffset.MaxValue
        );
        var controls = Path.Combine(folder, "controls.csv");
        File.WriteAllLines(
            controls,
            [
                .. File.ReadLines(controls)
                    .Where(line => !line.EndsWith("bridging plasma", StringComparison.Ordinal)),
            ]
        );
        var outcome = StudyPipeline.Analyze(
            StudyBytes.Of(
                Directory
                    .EnumerateFiles(folder)
                    .Select(file =>
                        KeyValuePair.Create(
                            Path.GetFileName(file),
                            (ReadOnlyMemory<byte>)File.ReadAllBytes(file)
                        )
                    )
            )
        );
        Assert.True(outcome.TryGet(out var study), string.Join('\n', outcome.Queries));
        return study
                .Analysis.Sequences[0]
                .Cells.Single(cell => cell.Key.TimePoint == timePoint)
                .OwnConclusion == Conclusion.Supported;
    }
}
