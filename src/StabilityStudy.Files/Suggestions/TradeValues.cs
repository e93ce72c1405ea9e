using System.Collections.Frozen;
using System.Text.RegularExpressions;
using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Suggestions;

/// <summary>What the words in the fields of laboratories' files mean: analytes, time points, missing results, flags. Common practice.</summary>
internal static partial class TradeValues
{
    private const int Milliseconds = 1000;

    // Words of one line mean the same quantity. Quick and TP, which are percentages in some countries and seconds in others, are not here.
    private static readonly ImmutableArray<FrozenSet<string>> s_analytes =
    [
        WordLists.Set(
            "aptt, ptt, ttpa, tca, apttfs, activatedpartialthromboplastintime, partialthromboplastintime, aktiviertepartiellethromboplastinzeit, tempsdecephalineactivee, tempsdecephalineavecactivateur, tiempodetromboplastinaparcialactivado"
        ),
        WordLists.Set(
            "pt, prothrombintime, thromboplastinzeit, tpz, prothrombinzeit, tempsdeprothrombine, tiempodeprotrombina"
        ),
        WordLists.Set("inr, ptinr, internationalnormalizedratio"),
        WordLists.Set(
            "fbg, fib, fibrinogen, fibrinogene, fibrinogeno, fibc, fbgc, clauss, fibrinogenclauss"
        ),
        WordLists.Set("tt, thrombintime, thrombinzeit, tempsdethrombine, tiempodetrombina, tct"),
        WordLists.Set("dd, ddimer, ddimere, ddim, dimerod, ddimero, dimerosd, dimered, dimeresd"),
        WordLists.Set(
            "fviii, f8, fviiic, factorviii, faktorviii, facteurviii, factor8, faktor8, f8c"
        ),
        WordLists.Set("fix, f9, factorix, faktorix, facteurix"),
        WordLists.Set("at, at3, atiii, antithrombin, antithrombine, antitrombina"),
        WordLists.Set("antixa, axa, heparin, heparinantixa, antifxa, antifactorxa"),
        WordLists.Set("pc, proteinc, proteinec, proteinac"),
        WordLists.Set("ps, proteins, proteines, proteinas"),
        WordLists.Set("vwfag, vwf, vonwillebrandfactorantigen"),
        WordLists.Set("vwfrco, vwfact, vwfgpibm"),
    ];

    // Behind the word of an analyte these make another quantity of it.
    private static readonly FrozenSet<string> s_otherTests = WordLists.Set(
        "%, percent, prozent, ratio, inr, mix, mixing, mixed, heparinase, hepzyme, neutralized, corrected, lupus, control, kontrolle, antigen, ag, activity, act, derived, abgeleitet, poc, bedside, norm, normal, mean, delta, diff"
    );

    private static readonly FrozenDictionary<string, string> s_missing = WordLists.Table(
        (
            "CLOT",
            "clotted, clot, coagulated, geronnen, koagel, gerinnsel, koaguliert, caillot, coagule, caille, coagulado, coagulo"
        ),
        ("FIBRIN", "fibrin, fibrin seen, fibrine, fibrina"),
        (
            "HEMOLYSIS",
            "hemolyzed, haemolysed, hemolysis, haemolysis, hamolyse, hamolytisch, hemolyse, hemolise, hemolisis, hemolizado"
        ),
        (
            "QNS",
            "qns, insufficient, quantity not sufficient, insufficient sample, zu wenig material, zu wenig, material reicht nicht, insuffisant, quantite insuffisante, insuficiente, muestra insuficiente"
        ),
        ("ERROR", "error, failed, fehler, messfehler, erreur, echec"),
        (
            "NT",
            "nt, not tested, not done, nicht gemessen, nicht bestimmt, n d, non teste, non realise, no realizado"
        ),
        ("NA", "na, n a, no result, kein ergebnis, pas de resultat, sin resultado")
    );

    private static readonly FrozenDictionary<string, string> s_yesNo = WordLists.Table(
        ("yes", "yes, y, ja, j, oui, o, si, true"),
        ("no", "no, n, nein, non, false")
    );

    private static readonly FrozenDictionary<string, string> s_grades = WordLists.Table(
        ("none", "none, no, nein, keine, non, aucune, ninguna, no hemolysis"),
        ("slight", "slight, mild, leicht, legere, leve"),
        ("moderate", "moderate, massig, mittel, moderee, moderada"),
        ("gross", "gross, severe, strong, stark, forte, grave, severa")
    );

    private static readonly FrozenSet<string> s_highAndLow = WordLists.Set(
        "h, l, hh, ll, hi, lo, high, low, normal, hoch, niedrig, haut, bas, alto, bajo"
    );

    /// <summary>The analytes that a word may mean, from those of the protocol.</summary>
    public static ImmutableArray<Analyte> AnalytesOf(string text, IEnumerable<Analyte> planned)
    {
        var word = PlainWords.Compact(text);
        var all = planned.ToImmutableArray();
        if (word.Length == 0)
        {
            return [];
        }

        if (all.FirstOrDefault(analyte => analyte.Id == text || analyte.Loinc == text) is { } exact)
        {
            return [exact];
        }

        ImmutableArray<Analyte> named =
        [
            .. all.Where(analyte =>
                PlainWords.Compact(analyte.Id) == word
                || PlainWords.Compact(analyte.Name) == word
                || s_analytes.Any(group => group.Contains(word) && IsOf(group, analyte))
            ),
        ];
        return named;
    }

    /// <summary>The analytes whose word begins a text, such as that of a reagent behind it: "APTT-FS".</summary>
    public static ImmutableArray<Analyte> BeginningOf(string text, IEnumerable<Analyte> planned) =>
        PlainWords.Of(text) is [var first, .. var others]
        && !s_analytes.Any(group => group.Contains(PlainWords.Compact(text)))
        && !others.Any(s_otherTests.Contains)
            ? AnalytesOf(first, planned)
            : [];

    /// <summary>The planned occasion that a text names among other words; null where it names none, or more than one.</summary>
    public static TestOccasion? OccasionIn(string text, ImmutableArray<TimePoint> planned)
    {
        var words = PlainWords.Joined(text);
        var found = new List<TestOccasion>();
        if (Baseline().IsMatch(words))
        {
            found.Add(default);
        }

        foreach (Match match in Delay().Matches(words))
        {
            var count = int.Parse(match.Groups["count"].ValueSpan, CultureInfo.InvariantCulture);
            var delay = match.Groups["unit"].Value switch
            {
                "min" or "mins" or "minute" or "minutes" or "minuten" or "minutos" =>
                    TimeSpan.FromMinutes(count),
                "d"
                or "day"
                or "days"
                or "tag"
                or "tage"
                or "tagen"
                or "jour"
                or "jours"
                or "j"
                or "dia"
                or "dias" => TimeSpan.FromDays(count),
                _ => TimeSpan.FromHours(count),
            };
            if (count == 0)
            {
                found.Add(default);
            }
            else if (
                planned.FirstOrDefault(point => point.Delay == delay) is { } point
                && point.Delay == delay
            )
            {
                found.Add(new TestOccasion(point));
            }
            else
            {
                return null;
            }
        }

        return found.Distinct().ToArray() is [var only] ? only : null;
    }

    /// <summary>Whether a word counts delays: "h", "Stunden".</summary>
    public static bool IsUnitOfDelay(string word) => Delay().IsMatch("1 " + word);

    /// <summary>Whether a text is a bare number of hours or "T6", which may be one.</summary>
    public static TestOccasion? BareOccasion(string text, ImmutableArray<TimePoint> planned) =>
        Bare().Match(text.Trim()) is { Success: true } match
            ? OccasionIn(match.Groups["count"].Value + " h", planned)
            : null;

    /// <summary>Our word for a missing result; null where the text is none that is known.</summary>
    public static string? MissingOf(string text) =>
        s_missing.GetValueOrDefault(PlainWords.Joined(text));

    /// <summary>Our word in a column of tubes; null where the text is none that is known.</summary>
    public static string? WordOf(string column, string text) =>
        (
            column switch
            {
                "clot" => s_yesNo,
                "hemolysis" => s_grades,
                _ => FrozenDictionary<string, string>.Empty,
            }
        ).GetValueOrDefault(PlainWords.Joined(text));

    /// <summary>Whether a flag marks a high, low or normal result and says nothing of the test.</summary>
    public static bool IsHighOrLow(string flag) =>
        s_highAndLow.Contains(flag.Trim().ToLowerInvariant()) || flag.Trim() is "↑" or "↓";

    /// <summary>Whether a text is a unit that is known.</summary>
    public static bool IsUnit(string text) => UnitTable.Find(text) is not null;

    private static bool IsOf(FrozenSet<string> group, Analyte analyte) =>
        group.Contains(PlainWords.Compact(analyte.Id))
        || group.Contains(PlainWords.Compact(analyte.Name));

    [GeneratedRegex(
        @"(?<![a-z0-9])(?<count>[0-9]{1,3}) ?(?<unit>h|hr|hrs|hour|hours|std|stunde|stunden|heure|heures|hora|horas|min|mins|minute|minutes|minuten|minutos|d|day|days|tag|tage|tagen|jour|jours|j|dia|dias)(?![a-z])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Delay();

    [GeneratedRegex(
        @"(?<![a-z0-9])(baseline|basal|basalwert|basiswert|ausgangswert|initial|inicial|fresh|frisch|t 0|base)(?![a-z0-9])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Baseline();

    [GeneratedRegex(
        @"^[Tt]? ?(?<count>[0-9]{1,3})$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        Milliseconds
    )]
    private static partial Regex Bare();
}
