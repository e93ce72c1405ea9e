using System.Text.RegularExpressions;
using StabilityStudy.Core.Text;

namespace StabilityStudy.Cli.Commands;

/// <summary>How long a specimen has waited, as people write it: "5 h 10 min", "5h10min", "7 hours", "7:00", "420 min".</summary>
internal static partial class WaitedOption
{
    private const int MostDays = 3660;

    /// <summary>The time; null where it is not given.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="option">Name of the option.</param>
    /// <exception cref="UsageException">It is no time, or has no unit.</exception>
    public static TimeSpan? Read(string? text, string option)
    {
        if (text is null)
        {
            return null;
        }

        var trimmed = text.Trim();
        var match = Units().Match(trimmed);
        if (trimmed.Length == 0 || !match.Success || match.Length == 0)
        {
            match = Clock().Match(trimmed);
        }

        if (match.Length > 0)
        {
            var time =
                TimeSpan.FromDays(Number(match, "d"))
                + TimeSpan.FromHours(Number(match, "h"))
                + TimeSpan.FromMinutes(Number(match, "min"))
                + TimeSpan.FromSeconds(Number(match, "s"));
            return time.TotalDays <= MostDays
                ? time
                : throw new UsageException($"{option}: \"{trimmed}\" is longer than ten years.");
        }

        var shown = UnseenCharacters.Shown(trimmed);
        throw new UsageException(
            shown.Length > 0 && shown.All(char.IsAsciiDigit)
                ? $"{option}: {shown} what? Write {shown} h or {shown} min."
                : $"{option}: \"{shown}\" is no time. Write it as \"5 h 10 min\", 5:10 or \"310 min\"."
        );
    }

    private static int Number(Match match, string unit) =>
        match.Groups[unit] is { Success: true } found
            ? int.Parse(found.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture)
            : 0;

    [GeneratedRegex(
        "^((?<d>[0-9]{1,4}) ?d(ays?)?)? ?((?<h>[0-9]{1,6}) ?h((ou)?rs?)?)? ?((?<min>[0-9]{1,7}) ?min(ute)?s?)? ?((?<s>[0-9]{1,8}) ?s(ec(onds?)?)?)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Units();

    [GeneratedRegex(
        "^(?<h>[0-9]{1,4}):(?<min>[0-5][0-9])(:(?<s>[0-5][0-9]))?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Clock();
}
