namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>What a signature shows on the page: lines on white, in a thin frame.</summary>
/// <param name="Font">The font of all lines.</param>
/// <param name="Lines">The lines from the top.</param>
public sealed record SignatureStamp(StampFont Font, ImmutableArray<StampLine> Lines);
