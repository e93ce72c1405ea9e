namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Writes dates as PDF does (ISO 32000-1:2008, 7.9.4), to the second.</summary>
internal static class PdfDate
{
    public static PdfString Of(DateTimeOffset date)
    {
        var offset = date.Offset;
        var zone =
            offset == TimeSpan.Zero
                ? "Z"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(offset < TimeSpan.Zero ? '-' : '+')}{offset.Duration():hh\\'mm}"
                );
        return PdfString.OfText(
            date.ToString("'D:'yyyyMMddHHmmss", CultureInfo.InvariantCulture) + zone
        );
    }

    /// <summary>The date in a text of exactly the form written here; null for any other form.</summary>
    public static DateTimeOffset? Parse(PdfString text)
    {
        var parts = text.ToText();
        var zone = parts.EndsWith('Z') ? "+00'00" : "";
        var withZone = parts.TrimEnd('Z') + zone;
        return DateTimeOffset.TryParseExact(
            withZone.Replace('\'', ':'),
            "'D:'yyyyMMddHHmmsszzz",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var date
        )
            ? date
            : null;
    }
}
