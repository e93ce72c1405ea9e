namespace StabilityStudy.Statistics.Tests;

/// <summary>Peak expiratory flow of 17 people by two meters, L/min: Bland and Altman (1986), The Lancet 1:307–310.</summary>
public static class PeakFlow
{
    public static double[] Differences()
    {
        var table = ReferenceTable.Read("published/bland_altman_1986_pefr.csv");
        return [.. table.Column("wright1").Zip(table.Column("mini1"), (w, m) => w - m)];
    }
}
