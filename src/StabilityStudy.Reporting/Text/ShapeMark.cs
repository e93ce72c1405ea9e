namespace StabilityStudy.Reporting.Text;

/// <summary>The shapes of the conclusions in plain characters.</summary>
internal static class ShapeMark
{
    public static string Of(VerdictShape shape) =>
        shape switch
        {
            VerdictShape.Supported => "[+]",
            VerdictShape.NotSupported => "[x]",
            VerdictShape.ShorterThanToday => "[!]",
            VerdictShape.NotReached => "[ ]",
            VerdictShape.NotAssessed => "[-]",
            VerdictShape.Inconclusive => "[?]",
        };
}
