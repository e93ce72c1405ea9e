using StabilityStudy.Core.Text;

namespace StabilityStudy.Cli.Commands;

/// <summary>Texts that become a part of a file or page.</summary>
internal static class TextOption
{
    /// <summary>The text; null when it is not given.</summary>
    /// <exception cref="UsageException">It is empty, or not on one line, or has spaces around it.</exception>
    public static string? OneLine(string? text, string option) =>
        text is not null
        && (
            string.IsNullOrWhiteSpace(text)
            || UnseenCharacters.First(text) is not null
            || text.Trim() != text
        )
            ? throw new UsageException(
                $"{option} needs a text on one line, without spaces around it and without characters that cannot be seen."
            )
            : text;
}
