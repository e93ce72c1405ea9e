using System.Text;
using StabilityStudy.Core.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>
/// The one way to a screen. Whatever a file, a certificate or an argument brought into a text, nothing that it holds steers the terminal: characters that cannot be
/// seen come out as "[U+202E]". <see cref="WriteLine(string)"/> writes one line, so that a line break inside a name is shown as well;
/// texts of several lines go through <see cref="Write(string)"/>.
/// </summary>
internal sealed class ScreenWriter : TextWriter
{
    private readonly TextWriter _inner;
    private char? _high;

    private ScreenWriter(TextWriter inner)
        : base(inner.FormatProvider) => _inner = inner;

    /// <summary>The filter before a place to write to, which it does not own.</summary>
    public static ScreenWriter Over(TextWriter inner) => new(inner);

    public override Encoding Encoding => _inner.Encoding;

    public override void Write(char value)
    {
        // The two halves of one character may come one by one.
        if (_high is { } high)
        {
            _high = null;
            Pass(UnseenCharacters.ShownLines(new string([high, value])));
        }
        else if (char.IsHighSurrogate(value))
        {
            _high = value;
        }
        else if (value == '\n')
        {
            _inner.Write(value);
        }
        // A carriage return is half of a line end here; a lone one would let a text be overwritten.
        else if (value != '\r')
        {
            Pass(UnseenCharacters.ShownLines(value.ToString()));
        }
    }

    public override void Write(char[] buffer, int index, int count) =>
        Write(new string(buffer, index, count));

    public override void Write(ReadOnlySpan<char> buffer) => Write(buffer.ToString());

    public override void Write(string? value) => Pass(UnseenCharacters.ShownLines(value ?? ""));

    public override void WriteLine() => _inner.WriteLine();

    public override void WriteLine(string? value) =>
        _inner.WriteLine(UnseenCharacters.Shown(value ?? ""));

    public override void WriteLine(ReadOnlySpan<char> buffer) => WriteLine(buffer.ToString());

    /// <summary>JSON, whose strings keep every character, those that cannot be seen as escapes.</summary>
    public void WriteJson(string json) => _inner.Write(UnseenCharacters.EscapedJson(json));

    /// <summary>A word of the program's own in a color of the terminal.</summary>
    /// <param name="word">The word.</param>
    /// <param name="style">Parameters of the control sequence "select graphic rendition" (ECMA-48, 8.3.117).</param>
    public void WriteStyled(string word, string style) =>
        _inner.Write($"\e[{style}m{UnseenCharacters.Shown(word)}\e[0m");

    public override void Flush() => _inner.Flush();

    private void Pass(string text) => _inner.Write(text);
}
