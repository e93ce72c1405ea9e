using System.Text;
using StabilityStudy.Files.Words;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Cli.Folders;

/// <summary>The folder with a report that is prepared for a signature, and all that is needed to sign it elsewhere and to put the signature in.</summary>
internal sealed record PreparedFolder(string Path)
{
    private const int LongestPath = 1 << 15;

    /// <summary>The report with an empty place for the signature.</summary>
    public string Prepared => At("prepared.pdf");

    /// <summary>What is to be signed.</summary>
    public string ToSign => At("to-sign.bin");

    /// <summary>The certificate with whose key it is to be signed.</summary>
    public string Certificate => At("certificate.pem");

    /// <summary>Where the answer goes, unless somebody puts it elsewhere.</summary>
    public string Answer => At("answer.p7s");

    /// <summary>Names the report that is to become the signed one.</summary>
    private string ReportPath => At("report-path.txt");

    /// <summary>The folder of a prepared report.</summary>
    public static PreparedFolder Of(string prepared) =>
        new(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(prepared)) ?? ".");

    /// <summary>Writes everything; nothing that is there is replaced.</summary>
    /// <exception cref="UsageException">The folder holds a prepared report, or cannot be written.</exception>
    public void Write(string report, PublicCertificate certificate, PreparedDocument document)
    {
        foreach (
            var there in new[] { Prepared, ToSign, Certificate, ReportPath }.Where(File.Exists)
        )
        {
            throw new UsageException(
                $"{there} exists already and is not overwritten. Give another folder with --prepare, or remove what was prepared before."
            );
        }

        AtomicFile.Write(
            (ToSign, document.ToSign),
            (Certificate, Encoding.ASCII.GetBytes(certificate.Pem)),
            (ReportPath, Encoding.UTF8.GetBytes(System.IO.Path.GetFullPath(report) + "\n")),
            (Prepared, document.Bytes)
        );
    }

    /// <summary>The report from which it was prepared.</summary>
    /// <exception cref="UsageException">That is not written there.</exception>
    public string ReadReportPath() =>
        File.Exists(ReportPath)
            ? Encoding
                .UTF8.GetString(
                    InputFile.ReadFilled(ReportPath, LongestPath, "path of a report").Span
                )
                .TrimEnd('\n')
            : throw new UsageException(
                $"{Path} is no folder that --prepare wrote: there is no {System.IO.Path.GetFileName(ReportPath)} in it. With --complete, give the file prepared.pdf in its folder."
            );

    /// <summary>The certificate for which it was prepared.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public PublicCertificate ReadCertificate() => ReadCertificate(Certificate);

    /// <summary>A certificate whose key is elsewhere.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static PublicCertificate ReadCertificate(string path) =>
        PublicCertificate.Read(KeyFile.Bytes(path), out var problem)
        ?? throw new UsageException(
            $"{path}: {(problem == SigningKeyProblem.NoCertificate ? "There is no certificate in this file." : SigningWords.Of(problem))}"
        );

    private string At(string name) => System.IO.Path.Combine(Path, name);
}
