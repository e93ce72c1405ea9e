using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>For a look at the pages: set KEEP_DRAWINGS to a folder.</summary>
internal static class KeptDrawings
{
    public static DrawnReport Keep(DrawnReport drawn, string name)
    {
        if (Environment.GetEnvironmentVariable("KEEP_DRAWINGS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(Path.Combine(folder, name + ".pdf"), drawn.Pdf.ToArray());
        }

        return drawn;
    }
}
