namespace StabilityStudy.Files.Toml;

/// <summary>The number that says by which rules a file is written.</summary>
internal static class FormatNumber
{
    private const int HighestEver = 1000;

    /// <summary>Declares the key.</summary>
    public static Key<int> Declare(KeyTable table) =>
        table.Add(
            "format",
            Need.Required,
            ValueForms.Whole(0, HighestEver),
            "layout of the file",
            "1"
        );

    /// <summary>Raises a query unless the file has the format that this version reads.</summary>
    public static void Check(TomlTable root, Key<int> key, int known)
    {
        var format = root.Read(key);
        if (root.IsSound(key) && format != known)
        {
            root.Fault(
                key,
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
