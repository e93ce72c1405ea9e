namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>Reads the reference files that tests/ReferenceData/README.md describes.</summary>
internal static class RegressionReference
{
    public static string[] Cases { get; } = ["wide", "narrow", "tied", "small"];

    public static ExactPairs Pairs(string name)
    {
        var rows = Rows("computed/regression_pairs.csv")
            .Where(row => string.Equals(row[0], name, StringComparison.Ordinal))
            .ToArray();
        return ExactPairs.Create(
            [.. rows.Select(row => decimal.Parse(row[1], CultureInfo.InvariantCulture))],
            [.. rows.Select(row => decimal.Parse(row[2], CultureInfo.InvariantCulture))]
        );
    }

    public static Dictionary<string, double> Expected(string file, string name) =>
        Rows(file)
            .Where(row => string.Equals(row[0], name, StringComparison.Ordinal))
            .ToDictionary(row => row[1], row => Number(row[2]), StringComparer.Ordinal);

    public static double[] Column(string file, int column) =>
        [.. Rows(file).Select(row => Number(row[column]))];

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    public static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(Folder(), file))
            .Where(line => !line.StartsWith('#'))
            .Skip(1)
            .Select(line => line.Split(','));

    /// <summary>Equality to a relative tolerance, absolute below 1.</summary>
    public static void Close(double expected, double actual, double tolerance = 1e-9) =>
        Assert.True(
            Math.Abs(expected - actual) <= tolerance * Math.Max(1, Math.Abs(expected)),
            string.Create(
                CultureInfo.InvariantCulture,
                $"expected {expected:R}, got {actual:R}, tolerance {tolerance}"
            )
        );

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "StabilityStudy.sln")))
        {
            folder =
                folder.Parent
                ?? throw new DirectoryNotFoundException("The solution folder is not above.");
        }

        return Path.Combine(folder.FullName, "tests", "ReferenceData");
    }
}
