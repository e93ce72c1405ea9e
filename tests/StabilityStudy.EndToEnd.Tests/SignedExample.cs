using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>
/// The example's report, signed by its author and its approver with trial certificates, by the built program; made once, and
/// every class of tests has a copy of its own.
/// </summary>
public sealed class SignedExample : IAsyncLifetime
{
    private static readonly MadeOnce s_made = new(Make);

    private StudyCopy? _copy;

    /// <summary>The signed file.</summary>
    public string WithSignatures => Signed(Copy);

    /// <summary>The report without signatures.</summary>
    public string Report => Copy.At("study", "out", "report.pdf");

    /// <summary>Folder with the trial certificates.</summary>
    public string Keys => Copy.At("keys");

    private StudyCopy Copy => _copy ?? throw new InvalidOperationException("Not made yet.");

    public async ValueTask InitializeAsync() => _copy = await s_made.Copy();

    /// <summary>Path of a file or folder beside the study.</summary>
    public string At(string name) => Copy.At(name);

    public ValueTask DisposeAsync()
    {
        Copy.Dispose();
        return ValueTask.CompletedTask;
    }

    private static async Task<StudyCopy> Make()
    {
        var copy = StudyCopy.CreateLocked();
        await BuiltProgram.Done("report", copy.Study);
        await Certificate(copy, "Lab Scientist One");
        await Certificate(copy, "Medical Director One");
        await BuiltProgram.Done(
            Sign(copy, copy.At("study", "out", "report.pdf"), "author", "lab-scientist-one")
        );
        await BuiltProgram.Done([
            .. Sign(copy, Signed(copy), "approver", "medical-director-one"),
            "--decision",
            "approve",
        ]);
        return copy;
    }

    private static string Signed(StudyCopy copy) =>
        Assert.Single(Directory.GetFiles(copy.At("study", "signed")));

    private static Task Certificate(StudyCopy copy, string name) =>
        BuiltProgram.Done("trial-certificate", copy.At("keys"), "--name", name);

    private static string[] Sign(StudyCopy copy, string report, string role, string key) =>
        [
            "sign",
            report,
            "--role",
            role,
            "--key",
            copy.At("keys", key + ".p12"),
            "--passphrase-file",
            copy.At("keys", key + ".passphrase"),
        ];
}
