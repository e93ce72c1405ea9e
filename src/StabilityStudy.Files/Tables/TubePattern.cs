using System.Text;
using System.Text.RegularExpressions;

namespace StabilityStudy.Files.Tables;

/// <summary>
/// How one code holds the codes of specimen and tube: "{specimen}-{tube}". The tube is what follows the last sign between them;
/// {letter} is a tube of one letter, for codes without a sign.
/// </summary>
/// <param name="Text">The pattern as stated.</param>
internal sealed record TubePattern(string Text)
{
    private const string Specimen = "{specimen}";
    private const int Milliseconds = 1000;
    private const int LongestCode = 200;

    private static readonly ImmutableArray<(string Word, string Form)> Tubes =
    [
        ("{tube}", "(?<tube>[^FIRST]+)"),
        ("{letter}", "(?<tube>[A-Za-z])"),
        ("{digit}", "(?<tube>[0-9])"),
    ];

    private readonly Regex? _form = FormOf(Text);

    /// <summary>Whether the pattern tells specimen and tube apart.</summary>
    public bool IsSound => _form is not null;

    /// <summary>Specimen and tube of a code; null when it does not fit.</summary>
    public (string Specimen, string Tube)? Split(string code) =>
        code.Length <= LongestCode && _form?.Match(code) is { Success: true } match
            ? (match.Groups["specimen"].Value, match.Groups["tube"].Value)
            : null;

    private static Regex? FormOf(string text)
    {
        var words = Tubes
            .Where(item => text.Contains(item.Word, StringComparison.Ordinal))
            .ToArray();
        var at = text.IndexOf(Specimen, StringComparison.Ordinal);
        if (words is not [var (word, form)] || at < 0)
        {
            return null;
        }

        var tubeAt = text.IndexOf(word, StringComparison.Ordinal);
        if (tubeAt < at + Specimen.Length)
        {
            return null;
        }

        var between = text[(at + Specimen.Length)..tubeAt];
        var rest = text[(tubeAt + word.Length)..];
        if (
            (between.Length == 0 && word == Tubes[0].Word)
            || (text[..at] + between + rest).AsSpan().ContainsAny('{', '}')
        )
        {
            return null;
        }

        var pattern = new StringBuilder("^")
            .Append(Regex.Escape(text[..at]))
            .Append("(?<specimen>.+)")
            .Append(Regex.Escape(between))
            .Append(
                form.Replace(
                    "FIRST",
                    between.Length == 0
                        ? ""
                        : Regex.Escape(between[..1]).Replace("-", "\\-", StringComparison.Ordinal),
                    StringComparison.Ordinal
                )
            )
            .Append(Regex.Escape(rest))
            .Append("$(?!\n)");
        return new Regex(
            pattern.ToString(),
            RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
            TimeSpan.FromMilliseconds(Milliseconds)
        );
    }
}
