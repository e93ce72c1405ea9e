namespace StabilityStudy.Files.Rows;

/// <summary>The conditions of tests that were read before: rows with the same ones share them.</summary>
internal sealed class SharedConditions
{
    private readonly Dictionary<(string Run, string Analyte), TestConditions> _usual = [];

    /// <summary>The conditions, those of the last such row without flag and remark where they are the same.</summary>
    public TestConditions Of(
        string analyte,
        string unit,
        string run,
        string instrument,
        string lot,
        string calibration,
        string @operator,
        string flag,
        string remark,
        FlagMeaning meaning
    )
    {
        if (
            _usual.TryGetValue((run, analyte), out var usual)
            && usual.Unit == unit
            && usual.Instrument == instrument
            && usual.Lot == lot
            && usual.Calibration == calibration
            && usual.Operator == @operator
            && usual.Flag == flag
            && usual.Remark == remark
            && usual.FlagMeaning == meaning
        )
        {
            return usual;
        }

        var made = new TestConditions(
            unit,
            run,
            instrument,
            lot,
            calibration,
            @operator,
            flag,
            remark
        )
        {
            FlagMeaning = meaning,
        };
        if (flag.Length == 0 && remark.Length == 0)
        {
            _usual[(run, analyte)] = made;
        }

        return made;
    }
}
