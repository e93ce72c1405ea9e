using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Times and names as they stand on the sheets.</summary>
internal static class BenchWords
{
    private const double LeastHoursInDays = 72;

    /// <summary>"+6:00"; from three days on "+7 d" or "+7 d 12:00".</summary>
    public static string Offset(TimeSpan time)
    {
        var sign = time < TimeSpan.Zero ? "−" : "+";
        var span = time.Duration();
        var (hours, minutes) = ((int)Math.Floor(span.TotalHours), span.Minutes);
        return span.TotalHours < LeastHoursInDays
                ? string.Create(CultureInfo.InvariantCulture, $"{sign}{hours}:{minutes:00}")
            : hours % 24 == 0 && minutes == 0
                ? string.Create(CultureInfo.InvariantCulture, $"{sign}{hours / 24} d")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{sign}{hours / 24} d {hours % 24}:{minutes:00}"
            );
    }

    /// <summary>When a tube is spun, counted from collection.</summary>
    public static string Spin(SpinTime spin) =>
        spin switch
        {
            { Moment: SpinMoment.NotStated } => "____ to ____",
            { Moment: SpinMoment.Already } => "spun before",
            { Moment: SpinMoment.AtOnce, By: { } by } => $"at once, by {Offset(by)}",
            { Moment: SpinMoment.AtOnce } => "at once",
            { From: { } from, By: { } by } => $"{Offset(from)} to {Offset(by)}",
            { From: { } from } => $"from {Offset(from)}",
            _ => "____ to ____",
        };

    /// <summary>When a tube is tested, counted from collection.</summary>
    public static string Test(BenchTube tube) =>
        tube.Occasion.IsBaseline
            ? $"by {Offset(tube.Latest)}"
            : $"{Offset(tube.Earliest)} to {Offset(tube.Latest)}";

    /// <summary>"18 to 25".</summary>
    public static string Range(Storage storage) =>
        $"{Degrees(storage.LowestCelsius)} to {Degrees(storage.HighestCelsius)}";

    /// <summary>"1st", "2nd", "3rd", "11th".</summary>
    public static string Ordinal(int number) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{number}{(number % 100 is >= 11 and <= 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" })}"
        );

    /// <summary>"2 March 2026".</summary>
    public static string Date(DateOnly date) =>
        date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A group's name in lower case where it fits into some lines, else its key, whose name then stands below the table.</summary>
    public static string Group(PatientGroup group, double width, int lines)
    {
        var name = LowerFirst(group.Name);
        return LineBreaking.Break(name, SheetText.Small, width).Length <= lines ? name : group.Id;
    }

    /// <summary>The names of groups that stand in a table by their keys only; empty for none.</summary>
    public static string Keys(IEnumerable<PatientGroup> groups, double width, int lines)
    {
        var keys = groups
            .Distinct()
            .Where(group => Group(group, width, lines) == group.Id && group.Id != group.Name)
            .Select(group => $"{group.Id}: {LowerFirst(group.Name)}.")
            .ToImmutableArray();
        return keys.IsEmpty ? "" : " " + string.Join(' ', keys);
    }

    /// <summary>"B, C and D".</summary>
    public static string Letters(IEnumerable<string> letters)
    {
        var all = letters.Distinct().ToImmutableArray();
        return all.Length < 2
            ? string.Concat(all)
            : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private static string Degrees(decimal celsius) =>
        celsius.ToString("0.##", CultureInfo.InvariantCulture).Replace('-', '−');

    private static string LowerFirst(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1])
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;
}
