using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Toml;

/// <summary>The number that says by which rules a file is written.</summary>
internal static class FormatNumber
{
    private const int HighestEver = 1000;

    /// <summary>Raises a query unless the file has the format that this version reads.</summary>
    public static void Check(TomlTable root, int known)
    {
        var format = root.RequireWhole("format", 0, HighestEver);
        if (root.IsSound("format") && format != known)
        {
            root.Fault(
                "format",
                FileQueries.UnsupportedFormat,
                FormattableString.Invariant($"{format}"),
                FormattableString.Invariant(
                    $"This version reads format {known}, and the file has format {format}."
                ),
                FormattableString.Invariant(
                    $"Write format = {known}, or use a version that reads format {format}."
                )
            );
        }
    }
}
