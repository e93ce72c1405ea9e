using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>
/// From start to a verified signed report, command after command as a laboratory gives them, with invented data that follow the printed worksheets. Once waiting changes nothing and the
/// supported windows are approved; once every mean changes by twice its limit and the study is declined. Three protocols in the usual run; tests/long-proofs.sh asks for all of them.
/// </summary>
[Trait("lane", "slow")]
public sealed class ReadyProtocolWalkTests
{
    /// <summary>A clotting time on heparin, frozen plasma with a classification, and a pair of tubes: as different as protocols are.</summary>
    private static readonly string[] s_usual =
    [
        "aptt-ufh-whole-blood",
        "lupus-anticoagulant-frozen-plasma",
        "small-paired-sheet",
    ];

    /// <summary>What check asks of a complete study of a ready protocol and its director answers: what the file itself says is borne, and what is left of the invented laboratory.</summary>
    private static readonly string[] s_answered = ["late-baseline", "source-is-an-example"];

    /// <summary>A chance that hardly any study fails; the seed is fixed, so that the walk fails never or always.</summary>
    private const double NearlyCertain = 0.97;

    private const int Seed = 1;

    /// <summary>How many protocols the long proofs ask for, and how many they pass over first.</summary>
    private static readonly (int Count, int From) s_asked = (
        LongProof.Setting("WALKS", 0),
        LongProof.Setting("WALKS_FROM", 0)
    );

    private static readonly bool s_isLong = s_asked.Count > 0;

    public static TheoryData<string> Protocols() =>
        s_isLong
            ?
            [
                .. Directory
                    .EnumerateFiles(Path.Combine(RepositoryFile.Root, "protocols"), "*.toml")
                    .Select(file => Path.GetFileNameWithoutExtension(file))
                    .Order(StringComparer.Ordinal)
                    .Skip(s_asked.From)
                    .Take(s_asked.Count),
            ]
            : [.. s_usual];

    [Theory]
    [MemberData(nameof(Protocols))]
    public async Task A_ready_protocol_leads_to_a_verified_report(string name)
    {
        using var study = new WalkedStudy(name, Seed);
        await study.UntilTheFirstTube(s_isLong ? 600 : 60);
        using var harmful = study.Again();

        await WithoutChange(study);
        await FarBeyond(harmful);
    }

    private static async Task WithoutChange(WalkedStudy study)
    {
        await study.WhileCollecting(InventedTruth.NoChange);
        await study.DataComplete(InventedTruth.NoChange);
        Assert.Empty((await study.AnswerQueries()).Except(s_answered));
        if (study.Protocol.Draw is not null)
        {
            Assert.StartsWith(
                "Nothing is missing of 1 Title",
                await study.Lacking(),
                StringComparison.Ordinal
            );
        }

        var verify = await study.Decided("--decision", "approve", "--review", "2028-12-31");

        RequireVerified(study, verify);
        Assert.Contains("Decision: approved", verify.Out, StringComparison.Ordinal);
        var conclusions = await study.Conclusions();
        Assert.DoesNotContain("not-supported", conclusions.Values);
        Assert.DoesNotContain("not-assessed", conclusions.Values);
        foreach (var (key, chance) in study.Chances.Where(item => item.Value >= NearlyCertain))
        {
            Assert.True(conclusions[key] == "supported", $"{key} {chance}: {conclusions[key]}");
        }

        // Classes are not simulated: none of them turned.
        foreach (
            var (key, conclusion) in conclusions.Where(item => !study.Chances.ContainsKey(item.Key))
        )
        {
            Assert.True(conclusion == "supported", $"{key}: {conclusion}");
        }
    }

    /// <summary>All parts hold; where a study takes longer than the certificates of its protocol document are valid, only a trusted time stamp could show when that was signed, and nothing else is open.</summary>
    private static void RequireVerified(WalkedStudy study, Run verify)
    {
        var outlives = study.Protocol.TimePoints[^1].Delay > TimeSpan.FromDays(300);
        Assert.True(
            verify.Code == (outlives ? ExitCode.VerificationIncomplete : ExitCode.Done),
            verify.Out + verify.Error
        );
        Assert.Contains(
            outlives ? "\nNothing wrong was found" : "\nAll four parts hold.",
            verify.Out,
            StringComparison.Ordinal
        );
        Assert.Equal(outlives ? 3 : 4, verify.Out.Split("\n   HOLDS\n").Length - 1);
        Assert.Equal(
            outlives,
            Run.OneLine(verify.Out)
                .Contains(
                    "no trusted time stamp shows that the signature",
                    StringComparison.Ordinal
                )
        );
    }

    private static async Task FarBeyond(WalkedStudy study)
    {
        var truth = InventedTruth.FarBeyond(study.Protocol);
        await study.DataComplete(truth);

        var verify = await study.Decided(
            "--decision",
            "decline",
            "--reason",
            "no time point is supported"
        );

        RequireVerified(study, verify);
        Assert.Contains("Decision: DECLINED", verify.Out, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("supported", (await study.Conclusions()).Values);
    }
}
