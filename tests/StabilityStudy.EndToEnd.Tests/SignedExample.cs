using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The example's report, signed by its author and its approver with trial certificates, by the built program.</summary>
public sealed class SignedExample : IAsyncLifetime
{
    private readonly StudyCopy _copy = StudyCopy.CreateLocked();

    /// <summary>The signed file.</summary>
    public string WithSignatures => Assert.Single(Directory.GetFiles(_copy.At("study", "signed")));

    /// <summary>The report without signatures.</summary>
    public string Report => _copy.At("study", "out", "report.pdf");

    /// <summary>Folder with the trial certificates.</summary>
    public string Keys => _copy.At("keys");

    public async ValueTask InitializeAsync()
    {
        await BuiltProgram.Done("report", _copy.Study);
        await BuiltProgram.Done("trial-certificate", Keys, "--name", "Lab Scientist One");
        await BuiltProgram.Done("trial-certificate", Keys, "--name", "Medical Director One");
        await BuiltProgram.Done(Sign(Report, "author", "lab-scientist-one"));
        await BuiltProgram.Done([
            .. Sign(WithSignatures, "approver", "medical-director-one"),
            "--decision",
            "approve",
        ]);
    }

    /// <summary>Path of a file or folder beside the study.</summary>
    public string At(string name) => _copy.At(name);

    public ValueTask DisposeAsync()
    {
        _copy.Dispose();
        return ValueTask.CompletedTask;
    }

    private string[] Sign(string report, string role, string key) =>
        [
            "sign",
            report,
            "--role",
            role,
            "--key",
            Path.Combine(Keys, key + ".p12"),
            "--passphrase-file",
            Path.Combine(Keys, key + ".passphrase"),
        ];
}
