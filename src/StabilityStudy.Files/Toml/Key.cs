namespace StabilityStudy.Files.Toml;

/// <summary>A key of a table, declared once: how it is read, checked and described.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Need">Whether it must be given.</param>
/// <param name="Note">What it means.</param>
/// <param name="Example">A value as it is written; empty for a key that nobody writes by hand.</param>
internal abstract record Key(string Name, Need Need, string Note, string Example)
{
    /// <summary>The values that it may have, in words.</summary>
    public abstract string Allowed { get; }

    /// <summary>A line that may stand in the file: code = "WB-RT-12".</summary>
    public string Line =>
        Example.StartsWith("[[", StringComparison.Ordinal) ? Example : $"{Name} = {Example}";
}

/// <summary>A key that holds a value.</summary>
/// <param name="Form">How the value is written.</param>
internal sealed record Key<T>(
    string Name,
    Need Need,
    ValueForm<T> Form,
    string Note,
    string Example
) : Key(Name, Need, Note, Example)
{
    public override string Allowed => Form.Allowed;
}

/// <summary>A key that holds a table, or a list of tables.</summary>
/// <param name="Keys">The keys of each.</param>
/// <param name="IsList">Whether it is a list.</param>
internal sealed record TableKey(
    string Name,
    Need Need,
    KeyTable Keys,
    bool IsList,
    string Note,
    string Example
) : Key(Name, Need, Note, Example)
{
    /// <summary>Whether the keys of the table are described under another one, which has the same.</summary>
    public bool IsDescribedElsewhere { get; init; }

    public override string Allowed => IsList ? "tables" : "a table";
}
