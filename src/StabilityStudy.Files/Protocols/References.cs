namespace StabilityStudy.Files.Protocols;

/// <summary>Checks that a code refers to something that exists.</summary>
internal static class References
{
    /// <summary>Raises a query when the code is not known.</summary>
    /// <param name="table">The table that holds the code.</param>
    /// <param name="key">The key that holds the code.</param>
    /// <param name="code">The code; empty when it could not be read.</param>
    /// <param name="what">What it refers to: "limit".</param>
    /// <param name="known">The codes that exist; null when they could not be read, and then nothing is checked.</param>
    public static void Check(
        TomlTable table,
        Key key,
        string code,
        string what,
        ImmutableArray<string>? known
    )
    {
        if (
            code.Length == 0
            || known is not { } codes
            || codes.Contains(code, StringComparer.Ordinal)
        )
        {
            return;
        }

        table.Remark(
            key,
            ProtocolQueries.UnknownReference,
            code,
            $"There is no {what} \"{code}\".{NearestWord.Question(code, codes)}",
            codes.IsEmpty
                ? $"Add the {what}, or remove the code."
                : $"Correct the code, or add the {what}; known are {Listed(codes)}."
        );
    }

    /// <summary>The first few codes for a message.</summary>
    public static string Listed(ImmutableArray<string> codes)
    {
        const int most = 12;
        var listed = string.Join(", ", codes.Take(most));
        return codes.Length <= most ? listed : listed + ", …";
    }
}
