namespace StabilityStudy.Reporting.Tests;

/// <summary>Contrast ratio as WCAG 2.2 defines it, from 1 to 21.</summary>
internal static class Contrast
{
    /// <summary>Of a color such as #1a2b3c with white.</summary>
    public static double WithPaper(string color) => 1.05 / (Luminance(color) + 0.05);

    private static double Luminance(string color)
    {
        double[] parts =
        [
            .. new[] { 1, 3, 5 }
                .Select(at =>
                    int.Parse(
                        color.AsSpan(at, 2),
                        NumberStyles.HexNumber,
                        CultureInfo.InvariantCulture
                    ) / 255.0
                )
                .Select(value =>
                    value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4)
                ),
        ];
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }
}
