namespace StabilityStudy.Files.Formats;

/// <summary>What a key or column is for.</summary>
/// <param name="Path">Its name, with the tables it is in: "analyte.unit".</param>
/// <param name="Need">Whether it must be given.</param>
/// <param name="Meaning">What it means, and which words it allows.</param>
/// <param name="Example">A value as it is written.</param>
internal sealed record KeyNote(string Path, KeyNeed Need, string Meaning, string Example)
{
    /// <summary>A line that may stand in the file: code = "WB-RT-12".</summary>
    public string Line =>
        Example.StartsWith("[[", StringComparison.Ordinal)
            ? Example
            : $"{Path[(Path.LastIndexOf('.') + 1)..]} = {Example}";
}

/// <summary>Whether a key must be given.</summary>
internal enum KeyNeed
{
    /// <summary>It must be there.</summary>
    Required,

    /// <summary>It may be there.</summary>
    Optional,

    /// <summary>Its meaning says when it must be there.</summary>
    Depends,

    /// <summary>Required for the kinds of criterion that have it.</summary>
    OfSomeKinds,
}
