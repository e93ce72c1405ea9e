namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>How much room the signature of the one who decides needs on page 1: a field has one place, and pages never change once drawn.</summary>
public static class SignatureRoom
{
    /// <summary>Up to so many rows of a decision stand on a line each; more follow each other in one text.</summary>
    public const int MostRowsApart = 10;

    // Printed name, meaning, decision, terms, conditions and reasons, time, record and certificate.
    private const int LinesBesideRows = 13;

    // In a running text about two rows stand on a line.
    private const int RowsOnLine = 2;

    /// <summary>Lines of small print for a decision on so many rows.</summary>
    internal static int Lines(int rows) =>
        LinesBesideRows + (rows <= MostRowsApart ? rows : (rows / RowsOnLine) + 1);
}
