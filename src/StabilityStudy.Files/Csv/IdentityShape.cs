using System.Text.RegularExpressions;

namespace StabilityStudy.Files.Csv;

/// <summary>Shapes that study codes must not have, because they can tell who a person is.</summary>
internal static partial class IdentityShape
{
    private const int Milliseconds = 1000;
    private const int FewestDigits = 6;

    /// <summary>What a code looks like: "a birth date", "a name", "a record number"; null when it looks like none.</summary>
    public static string? Of(string code) =>
        code switch
        {
            _ when IsPlain(code) => null,
            _ when BirthDate().IsMatch(code) => "a birth date",
            _ when RecordNumber().IsMatch(code) => "a record number",
            _ when PersonName().IsMatch(code) => "a name",
            _ => null,
        };

    // Nearly every code is plain; this spares a million rows the expressions below. A date has six digits and two
    // separators, a record number seven digits, a name a space, comma or underscore.
    private static bool IsPlain(ReadOnlySpan<char> code)
    {
        var digits = 0;
        var separators = 0;
        foreach (var c in code)
        {
            if (c is ' ' or ',' or '_')
            {
                return false;
            }

            digits += char.IsAsciiDigit(c) ? 1 : 0;
            separators += c is '-' or '.' or '/' ? 1 : 0;
        }

        return digits < FewestDigits || (digits == FewestDigits && separators < 2);
    }

    [GeneratedRegex(
        @"(?<![0-9])([0-9]{4}[-./ ][0-9]{1,2}[-./ ][0-9]{1,2}|[0-9]{1,2}[-./ ][0-9]{1,2}[-./ ][0-9]{4})(?![0-9])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex BirthDate();

    [GeneratedRegex(
        @"[0-9]{7,}|(?<![0-9])[0-9]{6}[-+][0-9]{3,4}|(?<![0-9])[0-9]{3}-[0-9]{2}-[0-9]{4}(?![0-9])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex RecordNumber();

    [GeneratedRegex(
        @"^\p{Lu}[\p{L}'’-]*\p{Ll}[,;]?[ _]+\p{Lu}[\p{L}'’-]*\p{Ll}\.?$|^\p{L}{2,}, ?\p{L}+\.?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex PersonName();
}
