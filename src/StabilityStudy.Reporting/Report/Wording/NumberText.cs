namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Numbers as the report prints them: invariant, with a true minus sign.</summary>
internal static class NumberText
{
    private const double SmallestPrintedP = 0.001;

    /// <summary>Most decimals that are added to tell a number from a limit; a double carries few more than these.</summary>
    private const int MostDecimals = 12;

    /// <summary>More come from a mean of replicates, not from an analyzer.</summary>
    private const int MostReportedDecimals = 6;

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

    /// <summary>
    /// A number that is read against a limit: it gets as many more decimals as it takes for the printed number to stand on
    /// the same side of the limit as the number itself. 94.97 beside 95 never prints as 95.0.
    /// </summary>
    public static string AgainstLimit(double value, double limit, int decimals) =>
        Fixed(value, DecimalsAgainst(value, limit, decimals));

    /// <summary>A change that is read against a lower and an upper limit, as <see cref="AgainstLimit"/>; a limit that is absent asks for nothing.</summary>
    public static string ChangeAgainstLimits(
        double value,
        double? lowerLimit,
        double? upperLimit,
        int decimals
    ) =>
        Change(
            value,
            Math.Max(
                DecimalsAgainst(value, lowerLimit, decimals),
                DecimalsAgainst(value, upperLimit, decimals)
            )
        );

    /// <summary>An interval of changes read against a lower and an upper limit.</summary>
    public static string IntervalAgainstLimits(
        double lower,
        double upper,
        double? lowerLimit,
        double? upperLimit,
        int decimals
    ) =>
        $"{ChangeAgainstLimits(lower, lowerLimit, upperLimit, decimals)} to {ChangeAgainstLimits(upper, lowerLimit, upperLimit, decimals)}";

    /// <summary>An interval of changes: "−1.2 to +3.4".</summary>
    public static string Interval(double lower, double upper, int decimals) =>
        $"{Change(lower, decimals)} to {Change(upper, decimals)}";

    /// <summary>An interval of values that are not changes: "0.95 to 1.02".</summary>
    public static string Range(double lower, double upper, int decimals) =>
        $"{Fixed(lower, decimals)} to {Fixed(upper, decimals)}";

    /// <summary>A number from a file, without trailing zeros.</summary>
    public static string Plain(decimal value) =>
        value.ToString("0.############", CultureInfo.InvariantCulture).Replace('-', '\u2212');

    /// <summary>A result with the decimals that it was reported with; a mean of replicates, which may have many, without trailing zeros.</summary>
    public static string AsReported(decimal value) =>
        value.Scale > MostReportedDecimals
            ? Plain(value)
            : value.ToString(CultureInfo.InvariantCulture).Replace('-', '\u2212');

    /// <summary>An exponent, in raised digits.</summary>
    public static string Superscript(int exponent) =>
        string.Concat(Count(exponent).Select(digit => "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit - '0']));

    /// <summary>A count.</summary>
    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A day, "2026-03-02"; nothing where there is none.</summary>
    public static string Day(DateOnly? day) =>
        day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    /// <summary>A time to the minute with its offset.</summary>
    public static string Minute(DateTimeOffset time) =>
        time.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);

    /// <summary>A p value, never printed as zero.</summary>
    public static string PValue(double p) => p < SmallestPrintedP ? "< 0.001" : Fixed(p, 3);

    /// <summary>A confidence level or share in percent: "90 %".</summary>
    public static string Percent(double share) =>
        (100 * share).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    /// <summary>
    /// The fewest decimals, at least those given, with which the printed number compares with the limit as the number does.
    /// A number that differs from the limit by less than its last carried digits is equal to it.
    /// </summary>
    private static int DecimalsAgainst(double value, double? absentOrLimit, int decimals)
    {
        if (absentOrLimit is not { } limit)
        {
            return decimals;
        }

        var side = SideOf(value, limit);
        for (var more = decimals; more < MostDecimals; more++)
        {
            var printed = double.Parse(
                value.ToString("F" + Count(more), CultureInfo.InvariantCulture),
                CultureInfo.InvariantCulture
            );
            if (SideOf(printed, limit) == side)
            {
                return more;
            }
        }

        return decimals;
    }

    private static int SideOf(double value, double limit) =>
        Math.Abs(value - limit) < Math.Pow(10, -MostDecimals) * Math.Max(1, Math.Abs(limit))
            ? 0
            : Math.Sign(value - limit);
}
