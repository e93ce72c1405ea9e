using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Protocols;

/// <summary>Compares the LOINC code of an analyte with its unit: D-dimer in FEU under the code of DDU is another test.</summary>
internal static class LoincChecks
{
    public static void Check(ProtocolDraft draft)
    {
        foreach (var (table, analyte) in draft.Analytes.Items)
        {
            if (
                table.IsSound(AnalyteKeys.Loinc)
                && table.IsSound(AnalyteKeys.Unit)
                && analyte.Loinc is { } code
                && LoincUnits.Contradict(code, analyte.Unit)
            )
            {
                table.Remark(
                    AnalyteKeys.Loinc,
                    CautionQueries.LoincContradictsUnit,
                    code,
                    $"The LOINC code {code} of {analyte.Id} is that of another kind of quantity than the unit \"{analyte.Unit}\"."
                );
            }
        }
    }
}
