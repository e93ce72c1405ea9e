using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>A register with one signed report, and the study behind it. The example's prothrombin time without anticoagulant: 8 h today, 10 h approved on a condition.</summary>
internal static class SignedRegister
{
    private static readonly MadeOnce s_register = new(MakeRegister);

    /// <summary>A folder with the register, the study and the keys, for one test.</summary>
    public static Task<StudyCopy> Copy() => s_register.Copy();

    private static async Task<StudyCopy> MakeRegister()
    {
        var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            "protocol.toml",
            "study.toml",
            "pairs.csv",
            "protocol.lock"
        );
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "Author One");
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "Director One");
        await Run.Of("report", copy.Study);
        var signed = copy.At("register", "signed.pdf");
        Directory.CreateDirectory(copy.At("register"));
        var report = copy.At("study", "out", "report.pdf");
        Assert.Equal(
            ExitCode.Done,
            (await Run.Sign(copy, report, "author", "author-one", "-o", signed)).Code
        );
        var director = await Run.Sign(
            copy,
            signed,
            "approver",
            "director-one",
            "--decision",
            "approve",
            "--window",
            "PT/none=10 h",
            "--condition",
            "tubes stay closed",
            "--reason",
            "few days"
        );
        Assert.Equal("", director.Code == ExitCode.Done ? "" : director.Error);
        return copy;
    }
}
