namespace StabilityStudy.Files.Suggestions;

/// <summary>How sure a suggestion is.</summary>
public enum HowSure
{
    /// <summary>Two readings fit, or it could change a number: a person chooses.</summary>
    Ask,

    /// <summary>Every row fits, and another reading is possible.</summary>
    Likely,

    /// <summary>Every row fits, and no other reading does.</summary>
    Sure,
}

/// <summary>Something that is suggested about how a file is written.</summary>
/// <param name="Name">What it is about: "delimiter".</param>
/// <param name="Value">What is suggested; empty where a person is asked.</param>
/// <param name="HowSure">How sure it is.</param>
/// <param name="Why">Why, and what speaks against it.</param>
public sealed record SuggestedSetting(string Name, string Value, HowSure HowSure, string Why);

/// <summary>How a column is to be read.</summary>
/// <param name="Header">The facility's header, or headers, in quotes.</param>
/// <param name="ReadAs">Our column, "not read", or empty where a person is asked.</param>
/// <param name="HowSure">How sure it is.</param>
/// <param name="Why">Why, and what speaks against it.</param>
public sealed record SuggestedColumn(string Header, string ReadAs, HowSure HowSure, string Why);

/// <summary>Rows of a file as they would be read.</summary>
/// <param name="Header">The columns that are shown.</param>
/// <param name="Rows">The first, the middle and the last row.</param>
/// <param name="Remarks">What they show of a reading that is in question.</param>
public sealed record SuggestedRows(
    ImmutableArray<string> Header,
    ImmutableArray<SuggestedRow> Rows,
    ImmutableArray<string> Remarks
);

/// <summary>A row as it would be read.</summary>
/// <param name="Line">Its line.</param>
/// <param name="Fields">Its fields, in the order of the header.</param>
public sealed record SuggestedRow(int Line, ImmutableArray<string> Fields);

/// <summary>A file that was looked at.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Extent">Its size, and how much of it was looked at.</param>
/// <param name="Kind">What it holds: "results"; empty where it is left aside.</param>
/// <param name="Settings">How it is written.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Rows as they would be read; null where none can be.</param>
public sealed record SuggestedFile(
    string Name,
    string Extent,
    string Kind,
    ImmutableArray<SuggestedSetting> Settings,
    ImmutableArray<SuggestedColumn> Columns,
    SuggestedRows? Rows
);

/// <summary>What only a person can say.</summary>
/// <param name="Text">The question, and how it is answered.</param>
/// <param name="CouldChangeNumbers">Whether a wrong answer would give other numbers or times.</param>
public sealed record SuggestedQuestion(string Text, bool CouldChangeNumbers);
