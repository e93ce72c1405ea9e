namespace StabilityStudy.Files.Toml;

/// <summary>A value of a TOML file, with its line and its text as written.</summary>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Text">The text as written.</param>
internal abstract record TomlValue(int Line, string Text);

/// <summary>A text.</summary>
internal sealed record TomlText(int Line, string Text, string Content) : TomlValue(Line, Text);

/// <summary>A number; it stays text, so that 7.5 is 7.5 and never passes through a double.</summary>
internal sealed record TomlNumber(int Line, string Text) : TomlValue(Line, Text);

/// <summary>True or false.</summary>
internal sealed record TomlFlag(int Line, string Text, bool IsTrue) : TomlValue(Line, Text);

/// <summary>A date, a time or both.</summary>
internal sealed record TomlMoment(int Line, string Text) : TomlValue(Line, Text);

/// <summary>A list in brackets.</summary>
internal sealed record TomlList(int Line, string Text, ImmutableArray<TomlValue> Items)
    : TomlValue(Line, Text);

/// <summary>A table: under a header, or in braces.</summary>
internal sealed record TomlEntries(int Line, ImmutableArray<TomlEntry> Entries)
    : TomlValue(Line, "");

/// <summary>A key and its value.</summary>
internal sealed record TomlEntry(string Key, int Line, TomlValue Value);
