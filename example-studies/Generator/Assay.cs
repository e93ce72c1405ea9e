namespace ExampleStudies.Generator;

/// <summary>How a laboratory measures one analyte.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Unit">Unit of the result.</param>
/// <param name="Decimals">Decimals of a result.</param>
/// <param name="WithinRunPercent">Imprecision within a run, percent.</param>
/// <param name="RunPercent">Standard deviation of the error that all results of one run share, percent.</param>
/// <param name="Lot">Lot of the reagent.</param>
/// <param name="Calibration">Code of the calibration; empty for a clotting time.</param>
/// <param name="Lowest">Reporting limit; 0 for none.</param>
internal sealed record Assay(
    string Analyte,
    string Unit,
    int Decimals,
    double WithinRunPercent,
    double RunPercent,
    string Lot,
    string Calibration,
    decimal Lowest
)
{
    /// <summary>Error in percent that all results of a run share.</summary>
    public double RunErrorPercent(string study, string run) =>
        RunPercent * SeededRandom.For($"{study} run {Analyte} {run}").Normal();

    /// <summary>The value that the analyzer finds: truth × error of the run × error of this result.</summary>
    public double Measure(double truth, string study, string run, string tube) =>
        truth
        * (1 + (RunErrorPercent(study, run) / 100))
        * (
            1
            + (
                WithinRunPercent
                * SeededRandom.For($"{study} result {Analyte} {tube}").Normal()
                / 100
            )
        );

    /// <summary>The result as reported: rounded half away from zero, or below the reporting limit.</summary>
    public string Report(double value)
    {
        var rounded = Math.Round((decimal)value, Decimals, MidpointRounding.AwayFromZero);
        return rounded < Lowest
            ? "<" + Lowest.ToString(CultureInfo.InvariantCulture)
            : rounded.ToString("F" + Decimals, CultureInfo.InvariantCulture);
    }
}
