namespace StabilityStudy.Files.Rows;

/// <summary>The conditions of tests that were read before: rows with the same ones share them, and nothing is made for such a row.</summary>
internal sealed class SharedConditions
{
    /// <summary>Runs that are remembered. Where nearly every row has a run of its own there is nothing to share.</summary>
    private const int MostRuns = 10_000;

    private readonly Dictionary<string, Dictionary<string, TestConditions>> _usual = new(
        StringComparer.Ordinal
    );
    private (string Run, Dictionary<string, TestConditions> Usual)? _last;

    /// <summary>The conditions of a row, those of the last such row of the analyte in the run without flag and remark where they are the same.</summary>
    public TestConditions Of(
        string analyte,
        string unit,
        string run,
        string instrument,
        string lot,
        string calibration,
        string person,
        string remark,
        (string Text, FlagMeaning Meaning) flag
    )
    {
        var usual = UsualIn(run);
        if (
            usual.TryGetValue(analyte, out var known)
            && (known.Unit, known.Run, known.Instrument, known.Lot) == (unit, run, instrument, lot)
            && (known.Calibration, known.Operator) == (calibration, person)
            && (known.Flag, known.FlagMeaning, known.Remark) == (flag.Text, flag.Meaning, remark)
        )
        {
            return known;
        }

        var conditions = new TestConditions(
            unit,
            run,
            instrument,
            lot,
            calibration,
            person,
            flag.Text,
            remark
        )
        {
            FlagMeaning = flag.Meaning,
        };
        if (conditions is { Flag: "", Remark: "" })
        {
            usual[analyte] = conditions;
        }

        return conditions;
    }

    // Rows of one run mostly follow each other.
    private Dictionary<string, TestConditions> UsualIn(string run)
    {
        if (_last is var (name, known) && name == run)
        {
            return known;
        }

        if (!_usual.TryGetValue(run, out var usual))
        {
            if (_usual.Count == MostRuns)
            {
                _usual.Clear();
            }

            usual = new(StringComparer.Ordinal);
            _usual.Add(run, usual);
        }

        _last = (run, usual);
        return usual;
    }
}
