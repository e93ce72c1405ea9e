namespace StabilityStudy.SignedPdf.Tests.Drawing;

internal static class TestData
{
    public static byte[] Read(string name) =>
        File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Data", name));
}
