using System.Text.RegularExpressions;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds the decimal sign of a file from the numbers in it. Where a sign could also mark thousands, a person is asked.</summary>
internal static partial class DecimalSigns
{
    private const int Milliseconds = 1000;
    private const int Group = 3;

    /// <summary>Drafts the decimal sign.</summary>
    /// <returns>How sure it is.</returns>
    public static HowSure Draft(SectionDraft draft, IEnumerable<ColumnProfile> columns)
    {
        var numbers = columns
            .SelectMany(column => column.Filled)
            .Where(cell => cell.Kind == CellKind.Text)
            .Select(cell => cell.Text.Trim().TrimStart('<', '>', '-', '+').Trim())
            .Where(text => text.Length > 0 && char.IsAsciiDigit(text[0]))
            .ToArray();
        var commas = numbers.Where(text => Comma().IsMatch(text)).ToArray();
        var points = numbers.Where(text => Point().IsMatch(text)).ToArray();
        var others =
            numbers.Length
            - commas.Length
            - points.Length
            - numbers.Count(text => text.All(char.IsAsciiDigit));
        var clearCommas = commas.Count(IsClear);
        var clearPoints = points.Count(IsClear);
        if (draft.Stated.Text("decimal") is { } stated and not "?")
        {
            draft.Settings.Add(new("decimal", stated, HowSure.Sure, "stated in study.toml"));
            return HowSure.Sure;
        }

        if (numbers.Length == 0)
        {
            return HowSure.Sure;
        }

        if (others > 0)
        {
            draft.Settings.Add(
                new(
                    "numbers",
                    "",
                    HowSure.Ask,
                    FormattableString.Invariant(
                        $"{others} of {numbers.Length} have more than one sign, or a space or a word: each will be a query"
                    )
                )
            );
        }

        if (commas.Length > 0 && points.Length == 0)
        {
            if (clearCommas == 0)
            {
                return Doubtful(draft, "comma", ",", commas[0]);
            }

            draft.Lines.Add(ReadLine.Text("decimal", ","));
            return Sure(draft, "comma", commas, numbers.Length, "no period");
        }

        if (points.Length > 0 && commas.Length == 0)
        {
            return clearPoints > 0
                ? Sure(draft, "point", points, numbers.Length, "no comma")
                : Doubtful(draft, "point", ".", points[0]);
        }

        if (commas.Length > 0)
        {
            // Either way the reader stops at the other sign, so that none is read wrongly.
            var isComma = clearPoints == 0 && clearCommas > 0;
            if (isComma)
            {
                draft.Lines.Add(ReadLine.Text("decimal", ","));
            }

            draft.Settings.Add(
                new(
                    "decimal",
                    isComma ? "comma" : "point",
                    HowSure.Ask,
                    FormattableString.Invariant(
                        $"\"{commas[0]}\" and \"{points[0]}\": {commas.Length} with a comma, {points.Length} with a point. The {(isComma ? points : commas).Length} others will be queries: export them without signs for thousands"
                    )
                )
            );
            return HowSure.Ask;
        }

        draft.Settings.Add(new("decimal", "none", HowSure.Sure, "whole numbers only"));
        return HowSure.Sure;
    }

    private static HowSure Sure(
        SectionDraft draft,
        string sign,
        string[] texts,
        int all,
        string without
    )
    {
        draft.Settings.Add(
            new(
                "decimal",
                sign,
                HowSure.Sure,
                FormattableString.Invariant(
                    $"\"{texts.First(IsClear)}\" in {(texts.Length == all ? $"all {all}" : $"{texts.Length} of {all}")} numbers; {without}"
                )
            )
        );
        return HowSure.Sure;
    }

    // Without a setting a point would be taken for the decimal sign: so the setting stands there and stops, until a person has written the sign.
    private static HowSure Doubtful(SectionDraft draft, string sign, string written, string text)
    {
        var (small, large) = (
            text.Replace(',', '.'),
            text.Replace(written, "", StringComparison.Ordinal)
        );
        draft.Settings.Add(
            new(
                "decimal",
                "",
                HowSure.Ask,
                $"always three digits behind the {sign}: \"{text}\" may be {small} or {large}"
            )
        );
        var question = draft.Ask(
            $"Is \"{text}\" in {draft.Table.File} {small}, or {large}? If the {sign} is the decimal sign, write decimal = \"{written}\". If it marks thousands, export the file again without it.",
            couldChangeNumbers: true
        );
        draft.Lines.Add(
            ReadLine.Text("decimal", "?") with
            {
                Tried = TomlLiteral.Quoted(written),
                Remark = FormattableString.Invariant($"question {question}"),
            }
        );
        return HowSure.Ask;
    }

    // A group of thousands has three digits, and no number of several groups begins with a zero or with more than three digits.
    private static bool IsClear(string text)
    {
        var at = text.AsSpan().IndexOfAny(',', '.');
        return text.Length - at - 1 != Group || at > Group || text[0] == '0';
    }

    [GeneratedRegex(@"^[0-9]+,[0-9]+$", RegexOptions.CultureInvariant, Milliseconds)]
    private static partial Regex Comma();

    [GeneratedRegex(@"^[0-9]+\.[0-9]+$", RegexOptions.CultureInvariant, Milliseconds)]
    private static partial Regex Point();
}
