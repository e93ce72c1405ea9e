using System.Globalization;

namespace StabilityStudy.Reporting.Report;

/// <summary>Numbers as the report prints them: invariant, with a true minus sign.</summary>
internal static class NumberText
{
    private const double SmallestPrintedP = 0.001;

    /// <summary>A number with a fixed count of decimals.</summary>
    public static string Fixed(double value, int decimals)
    {
        var text = value.ToString(
            "F" + decimals.ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );
        var isZero = text.All(c => c is '0' or '.' or '-');
        return isZero ? text.TrimStart('-') : text.Replace('-', '\u2212');
    }

    /// <summary>A change: like <see cref="Fixed"/>, with a plus sign when it is above zero.</summary>
    public static string Change(double value, int decimals)
    {
        var text = Fixed(value, decimals);
        return value > 0 && text.Any(c => c is >= '1' and <= '9') ? "+" + text : text;
    }

    /// <summary>An interval of changes: "−1.2 to +3.4".</summary>
    public static string Interval(double lower, double upper, int decimals) =>
        $"{Change(lower, decimals)} to {Change(upper, decimals)}";

    /// <summary>An interval of values that are not changes: "0.95 to 1.02".</summary>
    public static string Range(double lower, double upper, int decimals) =>
        $"{Fixed(lower, decimals)} to {Fixed(upper, decimals)}";

    /// <summary>A number from a file, without trailing zeros.</summary>
    public static string Plain(decimal value) =>
        value.ToString("0.############", CultureInfo.InvariantCulture).Replace('-', '\u2212');

    /// <summary>A count.</summary>
    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A p value, never printed as zero.</summary>
    public static string PValue(double p) => p < SmallestPrintedP ? "< 0.001" : Fixed(p, 3);

    /// <summary>A confidence level or share in percent: "90 %".</summary>
    public static string Percent(double share) =>
        (100 * share).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
