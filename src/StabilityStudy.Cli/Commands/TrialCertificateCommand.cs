using System.CommandLine;
using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.Cli.Commands;

/// <summary>trial-certificate: a self-issued signing certificate, to try signing out.</summary>
internal static class TrialCertificateCommand
{
    private const int SerialBytes = 16;
    private const int PassphraseBytes = 18;
    private const int ValidDays = 365;

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER")
        {
            Description = "Where key and certificate go.",
        };
        var name = new Option<string>("--name")
        {
            Description = "Name in the certificate.",
            HelpName = "NAME",
            Required = true,
        };
        var command = new Command(
            "trial-certificate",
            "Make a self-issued signing certificate for trial use, valid for a year. Nobody vouches for the name in it: stamps, page 1 and verify say so.\n\nExample:\n  stability-study trial-certificate my-keys --name \"Lab Scientist One\""
        )
        {
            folder,
            name,
        };
        command.SetAction(parsed =>
            (int)Run(
                terminal,
                parsed.GetRequiredValue(folder),
                TextOption.OneLine(parsed.GetRequiredValue(name), "--name")!
            )
        );
        return command;
    }

    private static ExitCode Run(Terminal terminal, string folder, string name)
    {
        var stem = string.Concat(
            name.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')
        );
        var (key, certificate, passphrase) = (
            Path.Combine(folder, stem + ".p12"),
            Path.Combine(folder, stem + ".pem"),
            Path.Combine(folder, stem + ".passphrase")
        );
        foreach (var path in new[] { key, certificate, passphrase }.Where(File.Exists))
        {
            throw new UsageException($"{path} exists already and is not overwritten.");
        }

        var now = terminal.Clock.GetUtcNow();
        var secret = Convert.ToBase64String(RandomNumberGenerator.GetBytes(PassphraseBytes));
        var made = TrialCertificate.Create(
            name,
            organization: null,
            now.AddMinutes(-1),
            now.AddDays(ValidDays),
            secret,
            RandomNumberGenerator.GetBytes(SerialBytes)
        );
        AtomicFile.WriteOwn(
            (key, made.Pkcs12),
            (certificate, Encoding.ASCII.GetBytes(made.CertificatePem)),
            (passphrase, Encoding.ASCII.GetBytes(secret + "\n"))
        );
        if (!OperatingSystem.IsWindows())
        {
            // The certificate is for others.
            File.SetUnixFileMode(
                certificate,
                UnixFileMode.UserRead
                    | UnixFileMode.UserWrite
                    | UnixFileMode.GroupRead
                    | UnixFileMode.OtherRead
            );
        }

        terminal.Out.WriteLine($"Key         {key}");
        terminal.Out.WriteLine($"Passphrase  {passphrase}");
        terminal.Out.WriteLine($"Certificate {certificate} (give this one to verify --trust)");
        terminal.Out.WriteLine(
            "For trial use: the certificate is self-issued, and nobody vouches for the name in it."
        );
        return ExitCode.Done;
    }
}
