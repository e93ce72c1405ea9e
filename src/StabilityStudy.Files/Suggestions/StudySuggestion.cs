using System.Text;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Suggestions;

/// <summary>What is suggested for the files that a laboratory's systems delivered. Nothing of it is applied before a person has read it.</summary>
/// <param name="Files">The files that were looked at, with those that are left aside.</param>
/// <param name="Questions">What only a person can say.</param>
/// <param name="Tables">Name of each table below [read] of study.toml, and its text.</param>
public sealed record StudySuggestion(
    ImmutableArray<SuggestedFile> Files,
    ImmutableArray<SuggestedQuestion> Questions,
    ImmutableArray<(string Section, string Text)> Tables
)
{
    /// <summary>The text to paste into study.toml.</summary>
    public string Text => string.Join('\n', Tables.Select(table => table.Text));

    /// <summary>Looks at the files of a study.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="asOf">The moment of the check.</param>
    /// <returns>What is suggested; the queries where protocol.toml or study.toml cannot be read.</returns>
    public static Outcome<StudySuggestion> Of(StudyBytes files, DateTimeOffset asOf) =>
        Suggesting.Of(files, asOf);

    /// <summary>study.toml with what is suggested; null where its tables of [read] are not written line by line, so that nothing can be put in their place.</summary>
    /// <param name="facts">study.toml.</param>
    public ReadOnlyMemory<byte>? WrittenInto(ReadOnlyMemory<byte> facts)
    {
        var mark = Utf8Text.WithoutMark(facts).Length < facts.Length ? "\uFEFF" : "";
        if (
            FactsEdit.Write(Utf8Text.Decode(Utf8Text.WithoutMark(facts).Span), Tables)
            is not { } text
        )
        {
            return null;
        }

        var queries = new QueryList();
        var bytes = Encoding.UTF8.GetBytes(mark + text);
        return
            TomlDocument.Read(bytes, StudyBytes.FactsName, queries) is not null
            && queries.StopCount == 0
            ? bytes
            : null;
    }
}
