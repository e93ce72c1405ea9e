using System.Text;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Tests.Drawing;

/// <summary>Rewrites with options that use everything, and takes results apart.</summary>
internal static class Rewritten
{
    public static byte[] CsvBytes { get; } =
        Encoding.UTF8.GetBytes(
            string.Concat(Enumerable.Range(0, 200).Select(static row => $"S{row},{row * 0.5}\n"))
        );

    public static RewriteOptions Options { get; } =
        new(
            "Stability of <aPTT> & PT",
            "Trial laboratory",
            "trial 1.0",
            "en-US",
            new DateTimeOffset(2026, 1, 2, 3, 4, 5, TimeSpan.FromHours(-5)),
            [
                new(
                    "results.csv",
                    "text/csv",
                    "Results as analyzed",
                    AttachmentRelationship.Data,
                    CsvBytes
                ),
                new(
                    "prüfplan.toml",
                    "application/toml",
                    "Protocol",
                    AttachmentRelationship.Source,
                    "format = 1\n"u8.ToArray()
                ),
                new(
                    "empty.txt",
                    "text/plain",
                    "Nothing",
                    AttachmentRelationship.Unspecified,
                    default
                ),
            ]
        );

    public static byte[] Of(byte[] drawn) => Of(drawn, Options);

    public static byte[] Of(byte[] drawn, RewriteOptions options) =>
        Value(DeterministicRewrite.Rewrite(drawn, options)).ToArray();

    public static PdfDocument Read(byte[] bytes) => Value(PdfDocumentReader.Read(bytes));

    public static T Value<T>(PdfResult<T> result)
    {
        Assert.True(result.TryGet(out var value, out var failure), failure?.ToString());
        return value;
    }
}
