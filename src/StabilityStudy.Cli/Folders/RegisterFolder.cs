using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Register;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Folders;

/// <summary>Reads a folder of signed reports: every PDF file in it, each verified now. Nothing is remembered between two calls.</summary>
internal static class RegisterFolder
{
    /// <summary>The register.</summary>
    /// <exception cref="UsageException">There is no such folder, or no PDF file in it.</exception>
    public static WindowRegister Read(string folder, VerificationOptions options, Terminal terminal)
    {
        if (!Directory.Exists(folder))
        {
            throw new UsageException($"There is no folder {folder}.");
        }

        var files = KeyFile
            .In(folder)
            .Where(file =>
                Path.GetExtension(file).Equals(".pdf", StringComparison.OrdinalIgnoreCase)
            )
            .ToImmutableArray();
        if (files.IsEmpty)
        {
            throw new UsageException(
                $"There is no PDF file in {folder}. Put the signed reports of your studies into it."
            );
        }

        return new WindowRegister([
            .. files.Select(file => ReadFile(file, options, terminal)).OfType<RegisteredReport>(),
        ]);
    }

    /// <summary>A file that cannot be opened stands in the register as one that is not trusted: it may hold anything.</summary>
    private static RegisteredReport? ReadFile(
        string file,
        VerificationOptions options,
        Terminal terminal
    )
    {
        var name = Path.GetFileName(file);
        terminal.Progress("Verifying " + name);
        try
        {
            return RegisterReading.Read(name, ReportFile.Read(file), options);
        }
        catch (UsageException error)
        {
            return new RegisteredReport(name, ReportStanding.NotTrusted) { Why = error.Message };
        }
    }
}
