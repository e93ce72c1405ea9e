namespace StabilityStudy.Core.Pairing;

/// <summary>The unit of estimation and conclusion.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Group">Key of the patient group.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="TimePoint">Planned delay.</param>
public sealed record CellKey(string Analyte, string Group, string Storage, TimePoint TimePoint)
{
    /// <summary>The key in one line: "aPTT · none · wb-rt · 6 h".</summary>
    public override string ToString() => $"{Analyte} · {Group} · {Storage} · {TimePoint}";
}
