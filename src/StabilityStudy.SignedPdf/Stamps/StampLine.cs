namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>One line of a stamp.</summary>
/// <param name="Text">What it says; a line too long for the field makes the whole stamp smaller.</param>
/// <param name="Size">Font size in points, above 0.</param>
public sealed record StampLine(string Text, double Size);
