namespace StabilityStudy.Reporting.Model;

/// <summary>What a reader must know before trusting the conclusion.</summary>
internal sealed record Attentions(ImmutableArray<AttentionLine> Lines) : Block;

/// <summary>One remark.</summary>
/// <param name="Severity">Severity in a word, for example "Attention".</param>
/// <param name="Text">The remark.</param>
/// <param name="Where">Where it comes from (file and row, specimen, section); may be empty.</param>
internal sealed record AttentionLine(string Severity, string Text, string Where);
