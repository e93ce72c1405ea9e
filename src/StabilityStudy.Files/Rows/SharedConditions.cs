namespace StabilityStudy.Files.Rows;

/// <summary>The conditions of tests that were read before: rows with the same ones share them.</summary>
internal sealed class SharedConditions
{
    private readonly Dictionary<(string Run, string Analyte), TestConditions> _usual = [];

    /// <summary>The same conditions, those of the last such row of the analyte in the run without flag and remark where there was one.</summary>
    public TestConditions Of(string analyte, TestConditions conditions)
    {
        if (_usual.TryGetValue((conditions.Run, analyte), out var usual) && usual == conditions)
        {
            return usual;
        }

        if (conditions is { Flag: "", Remark: "" })
        {
            _usual[(conditions.Run, analyte)] = conditions;
        }

        return conditions;
    }
}
