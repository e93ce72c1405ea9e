using System.Text.RegularExpressions;

namespace StabilityStudy.Files.Rows;

/// <summary>Texts into which a spreadsheet turns numbers that look like dates: "12. Jan", "Mar-02", "12.01.2026".</summary>
internal static partial class SpreadsheetDate
{
    private const int Milliseconds = 1000;
    private const int Longest = 24;

    /// <summary>Whether a text is such a date.</summary>
    public static bool Is(string text) => text.Length is > 3 and <= Longest && Form().IsMatch(text);

    // Month names of English and German spreadsheets; those of other languages are refused as no results at all.
    [GeneratedRegex(
        @"^([0-9]{1,4}[-. /]{1,2}(jan|feb|mar|mrz|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-z]{0,6}\.?([-. /]{1,2}[0-9]{2,4})?|(jan|feb|mar|mrz|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-z]{0,6}\.?[-. /]{1,2}[0-9]{1,4}|[0-9]{1,2}[./-][0-9]{1,2}[./-][0-9]{2,4}|[0-9]{4}-[0-9]{2}-[0-9]{2}(T.*)?)$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Form();
}
