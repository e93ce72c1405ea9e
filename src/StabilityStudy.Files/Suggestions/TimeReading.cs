using System.Text.RegularExpressions;
using StabilityStudy.Files.OwnTables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>One way in which the times of a file may be written.</summary>
/// <param name="Format">date_format of study.toml; null where none is needed.</param>
/// <param name="Order">Which of day, month and year comes first, in words.</param>
/// <param name="HasShortYear">Whether years have two digits.</param>
internal sealed partial record TimeReading(string? Format, string Order, bool HasShortYear)
{
    private const int Milliseconds = 1000;

    /// <summary>First year that two digits mean: no study was tested before.</summary>
    public const int Century = 2000;

    private const int MostYearsBack = 10;

    // So few rows may be mistyped: another reading that fits but for them is in question too.
    private const int MostMistyped = 2;

    /// <summary>ISO 8601, or dates of a spreadsheet.</summary>
    public static readonly TimeReading Plain = new(null, "year-month-day", false);

    /// <summary>The time that a text says; null where it says none in this form.</summary>
    public DateTime? Read(string text) =>
        Format is null ? StrictTime.Read(text.Replace(' ', 'T'))?.Local
        : TimeForms.Parse(text, Format, HasShortYear ? Century : null) is { } iso
            ? StrictTime.Read(iso)?.Local
        : null;

    /// <summary>For each order of day, month and year the reading that fits most texts, where it fits all but a few of those that any fits.</summary>
    /// <param name="texts">Times as they stand, without empty ones.</param>
    /// <param name="asOf">The moment of the check, after which nothing was tested.</param>
    public static ImmutableArray<(TimeReading Reading, int Fits)> Of(
        ImmutableArray<string> texts,
        DateTime asOf
    )
    {
        ImmutableArray<string> distinct = [.. texts.Distinct(StringComparer.Ordinal)];
        if (distinct.All(text => StrictTime.Read(text) is not null))
        {
            return [(Plain, texts.Length)];
        }

        var found = Candidates(distinct)
            .Distinct()
            .Select(reading =>
                (Reading: reading, Fits: texts.Count(text => reading.Read(text) is not null))
            )
            .Where(item =>
                item.Fits > 0 && (!item.Reading.HasShortYear || item.Reading.IsNear(distinct, asOf))
            )
            .ToArray();
        var most = found.Select(item => item.Fits).DefaultIfEmpty().Max();
        return
        [
            .. found
                .Where(item => item.Fits >= Math.Max(1, most - MostMistyped))
                .OrderByDescending(item => item.Fits)
                .DistinctBy(item => item.Reading.Order),
        ];
    }

    // A field of two digits that is taken for the year would otherwise give tests of long ago.
    private bool IsNear(ImmutableArray<string> texts, DateTime asOf)
    {
        var years = texts.Select(Read).OfType<DateTime>().Select(time => time.Year).ToArray();
        return years.Length > 0
            && years.Min() >= asOf.Year - MostYearsBack
            && years.Max() <= asOf.Year + 1;
    }

    private static IEnumerable<TimeReading> Candidates(ImmutableArray<string> texts)
    {
        var matches = texts
            .Select(text => Form().Match(text))
            .Where(match => match.Success)
            .ToArray();
        bool All(string group, int length) =>
            matches.All(match => match.Groups[group].Length == length);
        foreach (var shape in matches.DistinctBy(ShapeOf).Take(8))
        {
            string Group(string name) => shape.Groups[name].Value;
            var (hour, minute) = (Group("hour").Length > 0, Group("second").Length > 0);
            if (!hour)
            {
                continue;
            }

            var half = Group("half");
            var clock =
                (half.Length > 0 ? (All("hour", 2) ? "hh" : "h") : (All("hour", 2) ? "HH" : "H"))
                + ":mm"
                + (minute ? ":ss" : "")
                + (
                    Group("fraction").Length > 0
                        ? "." + new string('f', Group("fraction").Length - 1)
                        : ""
                )
                + (half.Length > 0 ? (half[0] == ' ' ? " tt" : "tt") : "")
                + (Group("offset").Length > 0 ? (Group("offset")[0] == ' ' ? " zzz" : "zzz") : "");
            var join = Group("join");
            if (join.Contains('T', StringComparison.Ordinal))
            {
                // A letter in a form must be one of those that stand for a part of the time.
                continue;
            }

            var (one, two, three) = (Group("one").Length, Group("two"), Group("three").Length);
            var (first, second) = (Group("sign"), Group("sign2"));
            string Two(string letter, string group) => All(group, 2) ? letter + letter : letter;
            string Joined(string a, string b, string c) => $"{a}{first}{b}{second}{c}{join}{clock}";
            if (char.IsLetter(two[0]))
            {
                yield return new(
                    Joined(Two("d", "one"), "MMM", three == 4 ? "yyyy" : "yy"),
                    "day.month",
                    three == 2
                );
            }
            else if (one == 4)
            {
                yield return new(
                    Joined("yyyy", Two("M", "two"), Two("d", "three")),
                    "year-month-day",
                    false
                );
            }
            else if (three == 4)
            {
                yield return new(
                    Joined(Two("d", "one"), Two("M", "two"), "yyyy"),
                    "day.month",
                    false
                );
                yield return new(
                    Joined(Two("M", "one"), Two("d", "two"), "yyyy"),
                    "month.day",
                    false
                );
            }
            else
            {
                yield return new(Joined(Two("d", "one"), Two("M", "two"), "yy"), "day.month", true);
                yield return new(Joined(Two("M", "one"), Two("d", "two"), "yy"), "month.day", true);
                yield return new(
                    Joined("yy", Two("M", "two"), Two("d", "three")),
                    "year.month.day",
                    true
                );
            }
        }
    }

    private static string ShapeOf(Match match) =>
        string.Join(
            '/',
            match.Groups["one"].Length == 4,
            match.Groups["three"].Length,
            match.Groups["sign"].Value,
            match.Groups["join"].Value,
            match.Groups["second"].Length > 0,
            match.Groups["half"].Length,
            match.Groups["offset"].Length
        );

    [GeneratedRegex(
        @"^(?<one>[0-9]{1,4})(?<sign>[./ -]?)(?<two>[0-9]{1,2}|[A-Za-z]{3})(?<sign2>[./ -]?)(?<three>[0-9]{1,4})((?<join>[T ]{1,2}|, ?)(?<hour>[0-9]{1,2}):(?<minute>[0-9]{2})(?<second>:[0-9]{2})?(?<fraction>\.[0-9]{1,7})?(?<half> ?[AaPp][Mm])?(?<offset> ?([+-][0-9]{2}:[0-9]{2}))?)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Form();
}
