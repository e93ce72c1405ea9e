namespace StabilityStudy.Files.Suggestions;

/// <summary>A line of a proposed table of [read].</summary>
/// <param name="Key">The key, as it is written.</param>
/// <param name="Value">The value, as it is written.</param>
internal sealed record ReadLine(string Key, string Value)
{
    /// <summary>The table below the section: "" for itself, "columns", "values.flag".</summary>
    public string Table { get; init; } = "";

    /// <summary>The question that it answers; null where it is no answer, and then it is no comment.</summary>
    public int? Question { get; init; }

    /// <summary>What is tried in place of the question mark that stands for an answer, where leaving the line out would not stop; empty otherwise.</summary>
    public string Tried { get; init; } = "";

    /// <summary>Whether it is the answer that is tried, so that rows can be shown; never the one that is taken.</summary>
    public bool IsTried { get; init; }

    /// <summary>A remark behind it.</summary>
    public string Remark { get; init; } = "";

    /// <summary>A text.</summary>
    public static ReadLine Text(string key, string text) => new(key, TomlLiteral.Quoted(text));

    /// <summary>A number.</summary>
    public static ReadLine Number(string key, int number) =>
        new(key, number.ToString(CultureInfo.InvariantCulture));

    /// <summary>A column of the facility's, or several.</summary>
    public static ReadLine Column(string ours, params ImmutableArray<string> headers) =>
        new(ours, TomlLiteral.Quoted(headers)) { Table = "columns" };

    /// <summary>A word of the facility's.</summary>
    public static ReadLine Word(string column, string theirs, string ours) =>
        new(TomlLiteral.Key(theirs), TomlLiteral.Quoted(ours)) { Table = $"values.{column}" };

    /// <summary>What holds for every row.</summary>
    public static ReadLine Constant(string column, string value) =>
        new(column, TomlLiteral.Quoted(value)) { Table = "constants" };

    /// <summary>The same as an answer to a question.</summary>
    public ReadLine Answering(int question, bool isTried) =>
        this with
        {
            Question = question,
            IsTried = isTried,
        };
}
