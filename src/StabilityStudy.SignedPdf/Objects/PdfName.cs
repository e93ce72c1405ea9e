namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A name (ISO 32000-1:2008, 7.3.5) without its slash and escapes; each character stands for one byte, so none is above U+00FF.</summary>
internal sealed record PdfName : PdfObject
{
    /// <summary>Creates a name.</summary>
    /// <exception cref="ArgumentException">A character is U+0000 or above U+00FF.</exception>
    public PdfName(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (value.AsSpan().ContainsAnyExceptInRange('\u0001', '\u00FF'))
        {
            throw new ArgumentException("A name holds bytes other than zero.", nameof(value));
        }

        Value = value;
    }

    /// <summary>The name.</summary>
    public string Value { get; }
}
