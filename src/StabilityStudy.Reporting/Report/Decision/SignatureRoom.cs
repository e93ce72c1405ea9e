namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>How much room the signature of the one who decides needs in its box on page 1: a field has one place, and pages never change once drawn.</summary>
public static class SignatureRoom
{
    /// <summary>Up to so many rows of a decision stand on a line each; more follow each other in one text.</summary>
    public const int MostRowsApart = 10;

    // Printed name, meaning, decision, terms, conditions and reasons, time, record and certificate.
    private const int LinesBesideRows = 11;

    // In a running text about two rows stand on a line.
    private const int RowsOnLine = 2;

    /// <summary>Lines of small print.</summary>
    /// <param name="rows">Rows whose decision stands in the box: none where one alone decides, since it then stands in the rows of the table.</param>
    internal static int Lines(int rows) =>
        LinesBesideRows
        + (
            rows == 0 ? 0
            : rows <= MostRowsApart ? rows
            : (rows / RowsOnLine) + 1
        );
}
