using System.Text.RegularExpressions;

namespace StabilityStudy.Files.Csv;

/// <summary>Shapes that study codes must not have, because they can tell who a person is.</summary>
internal static partial class IdentityShape
{
    private const int Milliseconds = 1000;
    private const int FewestDigits = 6;

    private const string ANumber = "a record number";
    private const string ATelephone = "a telephone number";
    private const string AnAddress = "an e-mail address";

    /// <summary>What a code looks like: "a birth date", "a name", "a record number"; null when it looks like none.</summary>
    public static string? Of(string code) =>
        code switch
        {
            _ when IsPlain(code) => null,
            _ when Address().IsMatch(code) => AnAddress,
            _ when BirthDate().IsMatch(code) => "a birth date",
            _ when Telephone().IsMatch(code) => ATelephone,
            _ when RecordNumber().IsMatch(code) => ANumber,
            _ when PersonName().IsMatch(code) => "a name",
            _ => null,
        };

    /// <summary>Whether a code looks like a number that a laboratory may have made for the study alone, so that somebody can declare that it names nobody.</summary>
    public static bool CanBeDeclared(string shape) => shape is ANumber or ATelephone;

    /// <summary>What a text that is no code holds: "a telephone number", "an e-mail address"; null when it holds none. A name in a text looks like any words.</summary>
    public static string? In(string text) =>
        IsPlain(text) ? null
        : Address().IsMatch(text) ? AnAddress
        : TelephoneInText().IsMatch(text) ? ATelephone
        : null;

    // Nearly every code is plain; this spares a million rows the expressions below. A date has six digits and two
    // separators, a record number seven digits, a name a space, comma or underscore, an address an @.
    private static bool IsPlain(ReadOnlySpan<char> code)
    {
        var digits = 0;
        var separators = 0;
        foreach (var c in code)
        {
            if (c is ' ' or ',' or '_' or '@')
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
        @"[\p{L}0-9._%+-]+@[\p{L}0-9-]+\.\p{L}{2,}",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Address();

    // With a plus sign, with an area code in brackets or before a slash or space, in a group of three, three and four digits, or in five pairs.
    [GeneratedRegex(
        @"^(\+[0-9]|00[1-9])[0-9 ()/.-]{6,}[0-9]$|^\(0?[0-9]{2,5}\)[ /-]?[0-9][0-9 -]{4,}[0-9]$|^0[0-9]{2,5}[ /][0-9][0-9 -]{4,}[0-9]$|^[0-9]{3}[ .-][0-9]{3}[ .-][0-9]{4}$|^0[0-9]([ .-][0-9]{2}){4}$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Telephone();

    [GeneratedRegex(
        @"(?<![0-9])(\+[0-9]{1,3}[ ()/.-]*[0-9]{2,}[0-9 ()/.-]{4,}[0-9]|\(0?[0-9]{2,5}\)[ /-]?[0-9]{3,}[0-9 -]*[0-9]{3,}|[0-9]{3}[ .-][0-9]{3}[ .-][0-9]{4})(?![0-9])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex TelephoneInText();

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
