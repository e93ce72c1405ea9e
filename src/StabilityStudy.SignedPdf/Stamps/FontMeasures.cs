namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>Heights and extent of a font, in thousandths of its size (ISO 32000-1:2008, table 122).</summary>
/// <param name="Ascent">Above the base line.</param>
/// <param name="Descent">Below it, negative.</param>
/// <param name="CapitalHeight">Of flat capitals.</param>
/// <param name="Box">Left, bottom, right, top of all glyphs together.</param>
internal sealed record FontMeasures(
    int Ascent,
    int Descent,
    int CapitalHeight,
    ImmutableArray<int> Box
);
