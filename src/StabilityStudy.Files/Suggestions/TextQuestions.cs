using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Questions about words of a file.</summary>
internal static class TextQuestions
{
    /// <summary>How many words of a column are asked about one by one.</summary>
    public const int Most = 8;

    private const int LongestShown = 24;

    /// <summary>Asks what a word means; its line is left commented out with a question mark in the place of the answer.</summary>
    public static void AskWord(SectionDraft draft, string column, string text, string question)
    {
        if (draft.Stated.Has($"values.{column}", TomlLiteral.Key(text)))
        {
            return;
        }

        if (IsShowable(text))
        {
            draft.Lines.Add(
                ReadLine
                    .Word(column, text, "?")
                    .Answering(draft.Ask(question, couldChangeNumbers: false), isTried: false)
            );
        }
        else
        {
            draft.Ask(question, couldChangeNumbers: false);
        }
    }

    /// <summary>A word as a question names it; one that could tell of a person is not repeated.</summary>
    public static string Shown(string text) =>
        IsShowable(text) ? text : "a text that is not repeated here";

    private static bool IsShowable(string text) =>
        text.Length <= LongestShown && IdentityShape.Of(text) is null;
}
