namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A number with a decimal point (ISO 32000-1:2008, 7.3.3), kept as the text it was written with, so that copying never rounds.</summary>
internal sealed record PdfReal : PdfObject
{
    /// <summary>Creates a real number from its text.</summary>
    /// <param name="text">Optional sign, digits with exactly one decimal point, at least one digit; no exponent.</param>
    /// <exception cref="ArgumentException">The text is no such number.</exception>
    public PdfReal(string text)
    {
        if (!IsReal(text))
        {
            throw new ArgumentException("Not a real number as PDF writes it.", nameof(text));
        }

        Text = text;
    }

    /// <summary>The number as written.</summary>
    public string Text { get; }

    /// <summary>The nearest double.</summary>
    public double Value =>
        double.Parse(
            Text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture
        );

    internal static bool IsReal(ReadOnlySpan<char> text)
    {
        var digits = text.Length > 0 && text[0] is '+' or '-' ? text[1..] : text;
        var point = digits.IndexOf('.');
        return point >= 0
            && digits.Length > 1
            && !digits[..point].ContainsAnyExceptInRange('0', '9')
            && !digits[(point + 1)..].ContainsAnyExceptInRange('0', '9');
    }
}
