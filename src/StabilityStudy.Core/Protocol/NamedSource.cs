namespace StabilityStudy.Core.Protocol;

/// <summary>A rule or limit of a protocol with the source that it names.</summary>
/// <param name="Of">What it is the source of: "limit aptt-bias".</param>
/// <param name="Text">The source as written; empty when there is none.</param>
public sealed record NamedSource(string Of, string Text)
{
    private const int Shortest = 8;

    /// <summary>Whether it says too little to be looked up.</summary>
    public bool IsTooShort => Text.Length is > 0 and < Shortest;

    /// <summary>Whether it says that it is from memory.</summary>
    public bool IsFromMemory => Text.Contains("from memory", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether it is an example, to be replaced by a document of the laboratory.</summary>
    public bool IsExample => Text.StartsWith("example", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether nobody can look it up.</summary>
    public bool IsNoDocument => IsTooShort || IsFromMemory || IsExample;

    /// <summary>The source of today's window.</summary>
    public static NamedSource OfStandardWindow(Analyte analyte) =>
        new($"standard window of {analyte.Id}", analyte.StandardWindow.Source);

    /// <summary>The source of today's window in a group.</summary>
    public static NamedSource OfGroupWindow(Analyte analyte, GroupWindow window) =>
        new($"window of {analyte.Id} in {window.Group}", window.Rule.Source);

    /// <summary>The source of the manufacturer's limit.</summary>
    public static NamedSource OfManufacturerLimit(Analyte analyte) =>
        new($"manufacturer's limit of {analyte.Id}", analyte.ManufacturerLimit?.Source ?? "");

    /// <summary>The source of a limit.</summary>
    public static NamedSource OfLimit(Limit limit) => new($"limit {limit.Id}", limit.Source);

    /// <summary>The source of the rules of eligibility.</summary>
    public static NamedSource OfEligibility(Eligibility eligibility) =>
        new("eligibility", eligibility.Source);

    /// <summary>The source of the rules of the draw.</summary>
    public static NamedSource OfDraw(DrawRules draw) => new("draw", draw.Source);

    /// <summary>The source of the rules of spinning.</summary>
    public static NamedSource OfSpin(SpinRules spin) => new("spin", spin.Source);

    /// <summary>The source of the rules of freezing.</summary>
    public static NamedSource OfFreezing(FreezingRules freezing) =>
        new("freezing", freezing.Source);

    /// <summary>Every source of a protocol.</summary>
    public static ImmutableArray<NamedSource> All(StudyProtocol protocol) =>
        [
            OfEligibility(protocol.Eligibility),
            .. protocol.Draw is { } draw ? [OfDraw(draw)] : ImmutableArray<NamedSource>.Empty,
            .. protocol.Spin is { } spin ? [OfSpin(spin)] : ImmutableArray<NamedSource>.Empty,
            .. protocol.Freezing is { } freezing
                ? [OfFreezing(freezing)]
                : ImmutableArray<NamedSource>.Empty,
            .. protocol.Analytes.SelectMany(analyte =>
                analyte
                    .GroupWindows.Select(window => OfGroupWindow(analyte, window))
                    .Prepend(OfStandardWindow(analyte))
                    .Append(OfManufacturerLimit(analyte))
            ),
            .. protocol.Limits.Select(OfLimit),
        ];
}
