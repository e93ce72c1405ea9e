namespace StabilityStudy.Core.Queries;

/// <summary>One kind of data query: the same code, severity and advice wherever it is raised.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Severity">What it does to the report.</param>
/// <param name="Meaning">What is wrong, in words.</param>
/// <param name="Remedy">What to do about it, in words.</param>
public sealed record QueryKind(string Code, Severity Severity, string Meaning, string Remedy);
