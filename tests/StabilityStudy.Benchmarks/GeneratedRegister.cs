using StabilityStudy.Cli;
using StabilityStudy.Cli.Commands;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Pipeline.Register;

namespace StabilityStudy.Benchmarks;

/// <summary>
/// A register of many files, each as large as the report of the smallest example and other in its bytes, and a cache that has an entry for each: what verifying that report gave,
/// for another analyte. So nothing is verified when it is listed, and everything else is done.
/// </summary>
internal sealed class GeneratedRegister : IDisposable
{
    /// <summary>The word with which the time of listing it is printed.</summary>
    public const string Word = "register";

    /// <summary>The word with which one is listed.</summary>
    public const string ListWord = "--list-register";

    private const int ReportsOfOneAnalyte = 4;

    private GeneratedRegister(string folder) => Folder = folder;

    public string Folder { get; }

    public static async Task<GeneratedRegister> Of(int count)
    {
        var register = new GeneratedRegister(
            Directory.CreateTempSubdirectory("stability-study-register-").FullName
        );
        string At(string name) => Path.Combine(register.Folder, name);
        var study = Path.Combine("example-studies", "small-paired-sheet");
        var report = At("report.pdf");
        foreach (var name in new[] { "Author One", "Director One" })
        {
            await Run("trial-certificate", At("keys"), "--name", name);
        }

        await Run("report", study, "-o", report);
        var signed = At("signed.pdf");
        await Run([.. Sign(report, "author", "author-one"), "-o", signed]);
        await Run([
            .. Sign(signed, "approver", "director-one"),
            "--decision",
            "approve",
            "--window",
            "PT/none=10 h",
            "--reason",
            "few days",
        ]);

        var trust = new TrustInput([At("keys")], [], []);
        var now = TimeProvider.System.GetUtcNow();
        var bytes = await File.ReadAllBytesAsync(signed);
        var entry = RegisterReading.Read("signed.pdf", bytes, trust.Read(now));
        var cache =
            VerificationCache.Open(At("cache"), trust.Digest(), now)
            ?? throw new InvalidOperationException("There is no cache.");
        Directory.CreateDirectory(At("register"));
        for (var i = 0; i < count; i++)
        {
            byte[] own = [.. bytes, .. System.Text.Encoding.ASCII.GetBytes(Name(i))];
            await File.WriteAllBytesAsync(Path.Combine(At("register"), Name(i) + ".pdf"), own);
            cache.Write(InputDigest.Sha256(own), Other(entry, i));
        }

        return register;

        string[] Sign(string file, string role, string key) =>
            [
                "sign",
                file,
                "--role",
                role,
                "--key",
                At($"keys/{key}.p12"),
                "--passphrase-file",
                At($"keys/{key}.passphrase"),
            ];
    }

    /// <summary>Lists it, as the program does.</summary>
    public static void List(string folder)
    {
        var code = Application
            .RunAsync(
                [
                    "supported-windows",
                    Path.Combine(folder, "register"),
                    "--trust",
                    Path.Combine(folder, "keys"),
                ],
                Terminal(folder),
                CancellationToken.None
            )
            .GetAwaiter()
            .GetResult();
        if (code is not (ExitCode.Done or ExitCode.VerificationIncomplete))
        {
            throw new InvalidOperationException($"{code}");
        }
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string Name(int i) =>
        string.Create(CultureInfo.InvariantCulture, $"report-{i:0000}");

    /// <summary>Several reports claim one cell, as happens over the years.</summary>
    private static RegisterEntry Other(RegisterEntry entry, int i)
    {
        var report = entry.Report!;
        var analyte = string.Create(
            CultureInfo.InvariantCulture,
            $"PT{i / ReportsOfOneAnalyte:000}"
        );
        return new RegisterEntry
        {
            Report = report with
            {
                InputDigest = InputDigest.Sha256(System.Text.Encoding.ASCII.GetBytes(Name(i))),
                Analytes = [analyte],
                Windows =
                [
                    .. report.Windows.Select(window =>
                        window with
                        {
                            Row = window.Row with { Analyte = analyte },
                        }
                    ),
                ],
            },
        };
    }

    private static Terminal Terminal(string folder) =>
        new(TextWriter.Null, TextWriter.Null, ShowsProgress: false, UsesColor: false, 80)
        {
            CacheFolder = Path.Combine(folder, "cache"),
        };

    private static async Task Run(params string[] arguments)
    {
        await using var error = new StringWriter();
        var code = await Application.RunAsync(
            arguments,
            new Terminal(TextWriter.Null, error, ShowsProgress: false, UsesColor: false, 80),
            CancellationToken.None
        );
        if (code != ExitCode.Done)
        {
            throw new InvalidOperationException(error.ToString());
        }
    }
}
