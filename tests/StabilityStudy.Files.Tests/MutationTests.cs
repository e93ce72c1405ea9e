using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>Good files damaged at random, always the same way. The variable FUZZ_INPUTS asks for another number of them.</summary>
[Trait("lane", "slow")]
public sealed class MutationTests
{
    private const int Seed = 20260302;
    private static readonly int s_mutations = LongProof.Setting("FUZZ_INPUTS", 10_000);

    private static readonly string[] Snippets =
    [
        "\"",
        "\"\"\"",
        "'",
        ",",
        "\n",
        "\r",
        "=",
        "[",
        "]",
        "{",
        "}",
        "[[",
        "#",
        ".",
        "-",
        "\0",
        "\uFEFF",
        "é",
        "𝟙",
        "9999999999999999999",
        "1e400",
        "nan",
        "a.b.c",
        "9999-12-31T23:59-14:00",
        "0001-01-01T00:00+14:00",
        "<",
        ">",
        "\\u0000",
    ];

    [Fact]
    public void No_mutation_of_a_good_study_throws()
    {
        var random = new Random(Seed);
        var names = GoodStudy.Bytes.Files.Keys.ToArray();
        var stopped = 0;
        for (var i = 0; i < s_mutations; i++)
        {
            var name = names[random.Next(names.Length)];
            var bytes = Mutate(GoodStudy.Bytes.Files[name].ToArray(), random);

            var outcome = StudyIntake.Read(GoodStudy.Bytes.With(name, bytes));

            var stops = outcome.Queries.Any(query => query.Severity == Severity.Stop);
            Assert.Equal(!stops, outcome.TryGet(out _));
            stopped += stops ? 1 : 0;
        }

        Assert.InRange(stopped, s_mutations / 2, s_mutations - 1);
    }

    private static byte[] Mutate(byte[] bytes, Random random)
    {
        var list = bytes.ToList();
        var changes = random.Next(1, 4);
        for (var i = 0; i < changes && list.Count > 0; i++)
        {
            var at = random.Next(list.Count);
            var length = Math.Min(random.Next(1, 12), list.Count - at);
            switch (random.Next(5))
            {
                case 0:
                    list[at] = (byte)random.Next(256);
                    break;
                case 1:
                    list.RemoveRange(at, length);
                    break;
                case 2:
                    list.InsertRange(random.Next(list.Count), list.GetRange(at, length));
                    break;
                case 3:
                    list.RemoveRange(at, list.Count - at);
                    break;
                default:
                    list.InsertRange(
                        at,
                        Encoding.UTF8.GetBytes(Snippets[random.Next(Snippets.Length)])
                    );
                    break;
            }
        }

        return [.. list];
    }
}
