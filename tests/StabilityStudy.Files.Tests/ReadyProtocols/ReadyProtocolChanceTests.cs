using StabilityStudy.Core.Protocol;
using StabilityStudy.Tests.Shared;

namespace StabilityStudy.Files.Tests.ReadyProtocols;

/// <summary>
/// Whether the chance that each ready protocol states follows from its own criteria, numbers and expected changes. The usual run draws few studies for one time point a protocol;
/// tests/long-proofs.sh draws PROTOCOL_STUDIES for every one.
/// </summary>
[Trait("lane", "slow")]
public sealed class ReadyProtocolChanceTests
{
    private const int Few = 60;

    private static readonly int s_studies = LongProof.Setting("PROTOCOL_STUDIES", Few);

    public static TheoryData<string> Names => ReadyProtocolFile.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void The_stated_chance_follows_from_the_protocol(string name)
    {
        var all = PlannedStudy.All(ReadyProtocolFile.Read(name).Protocol);
        var tried = s_studies > Few ? all : [all[name.Sum(letter => letter) % all.Length]];

        Assert.All(
            tried,
            study =>
            {
                var (least, most) = Bounds(study.Expected.Chance);
                Assert.InRange(
                    study.Chance(s_studies, seed: 20_260_301),
                    least - Error(least),
                    most + Error(most)
                );
            }
        );
    }

    private static (double Least, double Most) Bounds(ChanceOfSupport chance) =>
        (
            ChancesOfSupport.From(chance),
            ChancesOfSupport
                .All.Select(ChancesOfSupport.From)
                .Where(from => from > ChancesOfSupport.From(chance))
                .DefaultIfEmpty(1)
                .Min()
        );

    /// <summary>Three standard errors of a rate at a bound, of this simulation and of the one by which the word was chosen.</summary>
    private static double Error(double rate) =>
        3 * Math.Sqrt(rate * (1 - rate) * ((1.0 / s_studies) + (1.0 / 600)));
}
