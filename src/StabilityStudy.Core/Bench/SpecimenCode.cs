namespace StabilityStudy.Core.Bench;

/// <summary>A specimen that is to be drawn.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Group">Patient group.</param>
public sealed record SpecimenCode(string Code, string Group)
{
    /// <summary>Most specimens of one sheet.</summary>
    public const int Most = 500;

    /// <summary>
    /// The codes of a day: each group has a letter of its own, that of its earlier specimens or one from its key, and is numbered throughout the study, with as many specimens a day as the
    /// planned number asks for on the planned days; the last days have what is left.
    /// </summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="day">Day of collection, from 1.</param>
    /// <param name="tubes">The tubes that came: where all of a group are numbered behind one other beginning, that is kept.</param>
    public static ImmutableArray<SpecimenCode> OfDay(
        StudyProtocol protocol,
        int day,
        ImmutableArray<TubeRow> tubes
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var prefixes = Prefixes(protocol, tubes);
        var days = DaysOf(protocol);
        return
        [
            .. protocol.Groups.SelectMany(group =>
            {
                var planned = group.Specimens * Math.Max(1, protocol.Instruments.Length);
                var perDay = (planned + days - 1) / days;
                var first = Math.Min(planned, (day - 1) * perDay);
                return Enumerable
                    .Range(first + 1, Math.Min(perDay, planned - first))
                    .Select(number => new SpecimenCode(
                        prefixes[group.Id].Text + Padded(number, prefixes[group.Id].Digits),
                        group.Id
                    ));
            }),
        ];
    }

    /// <summary>On how many days specimens are collected: as planned, or else the fewest.</summary>
    public static int DaysOf(StudyProtocol protocol)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return Math.Max(1, protocol.PlannedDays ?? protocol.MinimumDays);
    }

    /// <summary>Reads the specimens of a group from their first and last code: "N-001..N-004"; one code alone is one specimen. Null where that is none, or too many.</summary>
    /// <param name="text">The text.</param>
    /// <param name="group">Patient group.</param>
    public static ImmutableArray<SpecimenCode>? Range(string text, string group)
    {
        ArgumentNullException.ThrowIfNull(text);
        var ends = text.Split("..");
        if (ends.Length > 2 || ends.Any(end => !IsCode(end)))
        {
            return null;
        }

        var (first, last) = (ends[0], ends[^1]);
        var prefix = first.TrimEnd([.. "0123456789"]);
        var digits = first.Length - prefix.Length;
        return ends.Length == 1 ? [new(first, group)]
            : digits is 0 or > 6
            || last.Length != first.Length
            || !last.StartsWith(prefix, StringComparison.Ordinal)
            || !int.TryParse(
                last.AsSpan(prefix.Length),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var to
            )
            || int.Parse(
                first.AsSpan(prefix.Length),
                NumberStyles.None,
                CultureInfo.InvariantCulture
            )
                is var from
                && (to < from || to - from >= Most)
                ? null
            :
            [
                .. Enumerable
                    .Range(from, to - from + 1)
                    .Select(number => new SpecimenCode(
                        prefix + number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0'),
                        group
                    )),
            ];
    }

    /// <summary>A code as it can stand on a label: the bar code puts the study before it, with a slash.</summary>
    private static bool IsCode(string text) =>
        text.Length is > 0 and <= 20
        && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.');

    private static string Padded(int number, int digits) =>
        number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');

    /// <summary>What stands before the number of each group's specimens, and with how many digits they are numbered.</summary>
    private static Dictionary<string, (string Text, int Digits)> Prefixes(
        StudyProtocol protocol,
        ImmutableArray<TubeRow> tubes
    )
    {
        const int usualDigits = 3;
        var prefixes = new Dictionary<string, (string Text, int Digits)>(StringComparer.Ordinal);
        foreach (var group in protocol.Groups)
        {
            if (
                tubes
                    .Where(tube => tube.Group == group.Id)
                    .Select(tube => tube.Specimen)
                    .Where(IsCode)
                    .Select(code => (Code: code, Text: code.TrimEnd([.. "0123456789"])))
                    .Select(item => (item.Text, Digits: item.Code.Length - item.Text.Length))
                    .Distinct()
                    .ToImmutableArray()
                    is [{ Text.Length: > 0, Digits: > 0 } kept]
                && prefixes.Values.All(other => other.Text != kept.Text)
            )
            {
                prefixes.Add(group.Id, kept);
            }
        }

        foreach (var (i, group) in protocol.Groups.Index())
        {
            var name = new string([
                .. group.Id.Where(char.IsAsciiLetterOrDigit).Select(char.ToUpperInvariant),
            ]);
            if (!prefixes.ContainsKey(group.Id))
            {
                var text =
                    Enumerable
                        .Range(1, name.Length)
                        .Select(length => name[..length] + "-")
                        .FirstOrDefault(text => prefixes.Values.All(other => other.Text != text))
                    ?? string.Create(CultureInfo.InvariantCulture, $"{name}G{i + 1}-");
                prefixes.Add(group.Id, (text, usualDigits));
            }
        }

        return prefixes;
    }
}
