namespace StabilityStudy.Core.Study;

/// <summary>From which field of the laboratory's messages a column of times comes, and so whose clock it was.</summary>
/// <param name="Column">Our name of the column.</param>
/// <param name="Field">The field of the standard, such as OBX-19.</param>
/// <param name="WithoutInstrument">How many results have such a time and name no instrument, so that nobody knows whose clock it was.</param>
public sealed record SentTime(string Column, string Field, int WithoutInstrument);
