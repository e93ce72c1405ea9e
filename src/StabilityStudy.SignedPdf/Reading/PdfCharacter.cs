namespace StabilityStudy.SignedPdf.Reading;

/// <summary>The three classes of bytes that separate tokens (ISO 32000-1:2008, 7.2.2).</summary>
internal static class PdfCharacter
{
    public static bool IsWhitespace(int value) => value is 0 or 9 or 10 or 12 or 13 or 32;

    public static bool IsDelimiter(int value) =>
        value is '(' or ')' or '<' or '>' or '[' or ']' or '{' or '}' or '/' or '%';

    public static bool IsRegular(int value) =>
        value >= 0 && !IsWhitespace(value) && !IsDelimiter(value);

    public static bool IsDigit(int value) => value is >= '0' and <= '9';

    /// <summary>The value of a hexadecimal digit; null when it is none.</summary>
    public static int? HexadecimalValue(int value) =>
        value switch
        {
            >= '0' and <= '9' => value - '0',
            >= 'A' and <= 'F' => value - 'A' + 10,
            >= 'a' and <= 'f' => value - 'a' + 10,
            _ => null,
        };
}
