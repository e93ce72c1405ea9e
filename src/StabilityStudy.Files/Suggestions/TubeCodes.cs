using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>How a file names specimens and tubes, and with it the specimen and tube of each row.</summary>
/// <param name="Rows">Specimen, tube and the part that tells tubes of a specimen apart, in each row; null where the code does not fit.</param>
internal sealed record TubeCodes(ImmutableArray<(string Specimen, string Tube, string Part)?> Rows)
{
    private const int MostParts = 12;
    private const double Nearly = 0.9;

    /// <summary>Whether the file names specimens alone.</summary>
    public bool NameNoTube => Rows.All(row => row is not var (_, tube, _) || tube.Length == 0);

    /// <summary>Drafts the codes; null where the file does not tell tubes apart.</summary>
    public static TubeCodes? Draft(SectionDraft draft, Surroundings study)
    {
        var specimen = draft.Profiles.FirstOrDefault(column =>
            draft.IsFree(column) && draft.MeaningOf(column) == "specimen"
        );
        var tube = draft.Profiles.FirstOrDefault(column =>
            draft.IsFree(column) && draft.MeaningOf(column) == "tube"
        );
        return (specimen, tube) switch
        {
            (not null, not null) => OfTwo(draft, study, specimen, tube),
            (null, null) => None(draft),
            _ => OfOne(draft, study, specimen ?? tube!),
        };
    }

    private static TubeCodes? None(SectionDraft draft)
    {
        draft.Ask(
            $"Which column of {draft.Table.File} holds the codes of specimens or tubes? Write it as tube, with tube_pattern, or as specimen and tube.",
            couldChangeNumbers: false
        );
        return null;
    }

    private static TubeCodes OfTwo(
        SectionDraft draft,
        Surroundings study,
        ColumnProfile specimen,
        ColumnProfile tube
    )
    {
        draft.Map("specimen", specimen);
        draft.Map("tube", tube);
        Say(draft, specimen, "specimen", HowSure.Sure, "");
        var codes = new TubeCodes([
            .. specimen.Cells.Select(
                (cell, i) =>
                    ((string, string, string)?)
                        (cell.Text.Trim(), tube.Cells[i].Text.Trim(), tube.Cells[i].Text.Trim())
            ),
        ]);
        var found = codes.Rows.Count(row => row is var (s, t, _) && study.Find(s, t) is not null);
        Say(
            draft,
            tube,
            "tube",
            study.Tubes.IsEmpty || found == codes.Rows.Length ? HowSure.Sure : HowSure.Likely,
            study.Tubes.IsEmpty ? "" : Known(found, codes.Rows.Length)
        );

        // Tubes named by their whole code are told apart by what follows that of the specimen.
        if (Parts(codes) > MostParts)
        {
            var whole = specimen
                .Cells.Select(
                    (cell, i) => (Specimen: cell.Text.Trim(), Tube: tube.Cells[i].Text.Trim())
                )
                .ToArray();
            foreach (var pattern in Patterns([.. whole.Select(row => row.Tube)]))
            {
                var split = whole.Select(row => pattern.Split(row.Tube)).ToArray();
                if (
                    split
                        .Select((parts, i) => parts?.Specimen == whole[i].Specimen)
                        .All(fits => fits)
                )
                {
                    draft.Lines.Add(ReadLine.Text("tube_pattern", pattern.Text));
                    draft.Lines.Add(new("whole_code", "true"));
                    return new([
                        .. whole.Select(
                            (row, i) =>
                                ((string, string, string)?)
                                    (row.Specimen, row.Tube, split[i]!.Value.Tube)
                        ),
                    ]);
                }
            }
        }

        return codes;
    }

    private static TubeCodes? OfOne(SectionDraft draft, Surroundings study, ColumnProfile column)
    {
        ImmutableArray<string> codes = [.. column.Cells.Select(cell => cell.Text.Trim())];
        var choices = Patterns([.. codes.Where(code => code.Length > 0).Distinct()])
            .SelectMany(pattern =>
                new[] { (Pattern: pattern, IsWhole: false), (Pattern: pattern, IsWhole: true) }
            )
            .Select(choice =>
                (
                    choice.Pattern,
                    choice.IsWhole,
                    Codes: Split(codes, choice.Pattern, choice.IsWhole)
                )
            )
            .Select(choice =>
                (
                    choice.Pattern,
                    choice.IsWhole,
                    choice.Codes,
                    Known: choice.Codes.Rows.Count(row =>
                        row is var (s, t, _) && study.Find(s, t) is not null
                    ),
                    Fits: choice.Codes.Rows.Count(row => row is not null)
                )
            )
            .OrderByDescending(choice => choice.Known)
            .ThenByDescending(choice => choice.Fits)
            .ToArray();
        var all = codes.Count(code => code.Length > 0);
        if (choices is [var best, ..] && (study.Tubes.IsEmpty || best.Known > 0))
        {
            draft.Map("tube", column);
            draft.Lines.Add(ReadLine.Text("tube_pattern", best.Pattern.Text));
            if (best.IsWhole)
            {
                draft.Lines.Add(new("whole_code", "true"));
            }

            Say(
                draft,
                column,
                "tube",
                best.Fits == all && (study.Tubes.IsEmpty || best.Known >= Nearly * all)
                    ? HowSure.Sure
                    : HowSure.Likely,
                study.Tubes.IsEmpty
                    ? FormattableString.Invariant(
                        $"the pattern {best.Pattern.Text} in {best.Fits} of {all}"
                    )
                    : Known(best.Known, all)
            );
            return best.Codes;
        }

        return OfSpecimens(draft, study, column, codes);
    }

    // The column names the specimen alone: its only tube, where every specimen has one, else a question.
    private static TubeCodes? OfSpecimens(
        SectionDraft draft,
        Surroundings study,
        ColumnProfile column,
        ImmutableArray<string> codes
    )
    {
        draft.Map("specimen", column);
        var known = codes.Count(code => study.Find(code) is not null);
        Say(
            draft,
            column,
            "specimen",
            study.Tubes.IsEmpty || known < codes.Length ? HowSure.Likely : HowSure.Sure,
            study.Tubes.IsEmpty ? "it does not tell tubes apart" : Known(known, codes.Length)
        );
        var names = study.Tubes.Select(tube => tube.Tube).Distinct().ToArray();
        if (names is [var only])
        {
            draft.Lines.Add(ReadLine.Constant("tube", only));
            return new([.. codes.Select(code => ((string, string, string)?)(code, only, only))]);
        }

        return new([.. codes.Select(code => ((string, string, string)?)(code, "", ""))]);
    }

    private static TubeCodes Split(
        ImmutableArray<string> codes,
        TubePattern pattern,
        bool isWhole
    ) =>
        new([
            .. codes.Select(code =>
                pattern.Split(code) is var (specimen, tube)
                    ? (specimen, isWhole ? code : tube, tube)
                    : ((string, string, string)?)null
            ),
        ]);

    /// <summary>Patterns that fit nearly all codes and give several specimens the same few parts.</summary>
    private static IEnumerable<TubePattern> Patterns(ImmutableArray<string> codes)
    {
        var signs = codes
            .Select(code => code.LastOrDefault(c => !char.IsLetterOrDigit(c)))
            .Where(sign => sign is '-' or '.' or '_' or '/' or ':' or '#' or '+')
            .Distinct()
            .Take(3);
        string[] texts =
        [
            .. signs.SelectMany(sign =>
                new[]
                {
                    $"{{specimen}}{sign}{{letter}}",
                    $"{{specimen}}{sign}{{digit}}",
                    $"{{specimen}}{sign}{{tube}}",
                }
            ),
            "{specimen}{letter}",
        ];
        foreach (var pattern in texts.Select(text => new TubePattern(text)))
        {
            var split = codes
                .Select(pattern.Split)
                .OfType<(string Specimen, string Tube)>()
                .ToArray();
            if (split.Length == 0 || split.Length < Nearly * codes.Length)
            {
                continue;
            }

            // A last number that counts the specimens is no tube.
            var parts = split.Select(code => code.Tube).Distinct().Count();
            var specimens = split.Select(code => code.Specimen).Distinct().Count();
            if (
                parts <= MostParts
                && (specimens > 1 || parts > 1)
                && specimens * 3 < split.Length * 2 + 2
            )
            {
                yield return pattern;
            }
        }
    }

    private static int Parts(TubeCodes codes) =>
        codes.Rows.Select(row => row?.Part).Distinct().Count();

    private static string Known(int known, int all) =>
        FormattableString.Invariant($"{known} of {all} are among the tubes that are read already");

    /// <summary>Says of a column of codes what it is read as; codes that could tell who a person is are not shown, and asked about.</summary>
    public static void Say(
        SectionDraft draft,
        ColumnProfile column,
        string readAs,
        HowSure sure,
        string why
    )
    {
        var personal = column.Values.Count(value => draft.IdentityOf(value.Text) is not null);
        if (personal > 0)
        {
            draft.Say(
                column,
                readAs,
                HowSure.Ask,
                FormattableString.Invariant(
                    $"{personal} codes look like {draft.IdentityOf(column.Values.First(value => draft.IdentityOf(value.Text) is not null).Text)}s: they are not shown"
                )
            );
            draft.Ask(
                $"{column.Shown} of {draft.Table.File} looks as if it could tell who a person is. Have the file exported with study codes; study.toml must not hold a list that links them.",
                couldChangeNumbers: false
            );
            return;
        }

        var example = column.Values is [var (text, _), ..] ? text : "";
        draft.Say(
            column,
            readAs,
            sure,
            why.Length > 0
                ? why
                : FormattableString.Invariant(
                    $"codes such as {example} in {column.Filled.Length} of {column.Cells.Length}"
                )
        );
    }
}
