using System.Collections.Frozen;
using System.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>
/// The way to a screen that is read aloud, or that shows ASCII only: signs become words or signs of ASCII, and lines that only rule off are left out. Letters stay as they are.
/// </summary>
internal sealed class PlainWriter(TextWriter inner) : TextWriter(inner.FormatProvider)
{
    /// <summary>Set to anything, it asks for this.</summary>
    public const string Variable = "STABILITY_STUDY_PLAIN";

    private static readonly FrozenDictionary<char, string> s_signs = new Dictionary<char, string>
    {
        ['−'] = "-",
        ['–'] = "-",
        ['—'] = "-",
        ['·'] = "-",
        ['“'] = "\"",
        ['”'] = "\"",
        ['’'] = "'",
        ['±'] = "+/-",
        ['°'] = "deg ",
        ['×'] = "x",
        ['≤'] = "<=",
        ['≥'] = ">=",
        ['≈'] = "about ",
        ['→'] = "->",
        ['…'] = "...",
        ['µ'] = "u",
        ['μ'] = "u",
        ['²'] = "^2",
        ['√'] = "sqrt ",
        ['\u00A0'] = " ",
        ['\u202F'] = " ",
    }.ToFrozenDictionary();

    private static readonly ImmutableArray<string> s_locale = ["LC_ALL", "LC_CTYPE", "LANG"];

    public override Encoding Encoding => inner.Encoding;

    /// <summary>Whether it is asked for, or the character set that the system names is not UTF-8.</summary>
    /// <param name="variable">The value of an environment variable, null where it is not set.</param>
    public static bool IsWanted(Func<string, string?> variable)
    {
        if (!string.IsNullOrEmpty(variable(Variable)))
        {
            return true;
        }

        // POSIX: the first of them that is set and not empty names the character set; "C" where none is.
        var set = s_locale.Select(variable).FirstOrDefault(value => !string.IsNullOrEmpty(value));
        return !OperatingSystem.IsWindows()
            && set
                ?.Replace("-", "", StringComparison.Ordinal)
                .Contains("utf8", StringComparison.OrdinalIgnoreCase)
                is not true;
    }

    public override void Write(char value) => inner.Write(Plain(value.ToString()));

    public override void Write(string? value)
    {
        var text = value ?? "";
        inner.Write(
            Plain(
                text.Contains('\n', StringComparison.Ordinal)
                    ? string.Join('\n', text.Split('\n').Where(line => !RulesOff(line)))
                    : text
            )
        );
    }

    public override void WriteLine() => inner.WriteLine();

    public override void WriteLine(string? value)
    {
        if (!RulesOff(value ?? ""))
        {
            inner.WriteLine(Plain(value ?? ""));
        }
    }

    public override void Flush() => inner.Flush();

    private static bool RulesOff(string line) =>
        line.AsSpan().Trim().Length > 2 && line.All(letter => letter is '-' or '=' or ' ');

    private static string Plain(string text)
    {
        if (!text.Any(s_signs.ContainsKey))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            plain.Append(s_signs.TryGetValue(letter, out var sign) ? sign : letter.ToString());
        }

        return plain.ToString();
    }
}
