using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Core.Criteria.CriterionKind;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of a criterion. Those that only some kinds have are declared with these kinds.</summary>
internal static class CriterionKeys
{
    private static readonly List<(Key Key, ImmutableArray<CriterionKind> Kinds)> OfKinds = [];

    private static readonly ImmutableArray<CriterionKind> s_withShare =
    [
        Individual,
        Reclassification,
        Classification,
    ];

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in the report", "\"mean\"");
    public static readonly Key<CriterionKind> Kind = Table.Add("kind", Required, Word(FileWords.CriterionKinds), "what is judged", "\"bias\"");
    public static readonly Key<ImmutableArray<string>> Groups = Table.Add("groups", Optional, Texts, "groups it applies to; all when not given", "[\"none\"]");
    public static readonly Key<double> Confidence = Table.Add("confidence", Required, ValueForms.Confidence, "confidence level", "0.90");
    public static readonly TableKey Limits = Of([Bias, Individual, DecisionLevel, Drift], note => Table.AddTable("limits", OfSomeKinds, KeyTable.Free, note("the limit of each analyte"), "{ aPTT = \"aptt-bias\" }"));
    public static readonly Key<ImmutableArray<string>> Analytes = Of([Reclassification, Classification], note => Table.Add("analytes", OfSomeKinds, EachOnce(Texts, _ => "An analyte stands twice in \"analytes\"."), note("the analytes"), "[\"INR\"]"));
    public static readonly Key<ChangeScale> Scale = Of([Bias], note => Table.Add("scale", OfSomeKinds, Word(FileWords.Scales), note("in what the mean change is judged"), "\"percent\""));
    public static readonly Key<decimal> SharePercentMinimum = Of([Individual, Classification], note => Table.Add("share_percent_min", OfSomeKinds, Number(NumberRange.RequiredShare), note("least share that agrees, percent; 100 only with \"point only\""), "85"));
    public static readonly Key<decimal> SharePercentMaximum = Of([Reclassification], note => Table.Add("share_percent_max", OfSomeKinds, Number(NumberRange.LargestShare), note("largest share that clearly changes side, percent"), "10"));
    public static readonly Key<string?> ChosenBy = Of(s_withShare, note => Table.Add("chosen_by", Optional, PageOneForms.Chooser, note("who chose the share: code of a person in study.toml, or a role"), "\"MD1\""));
    public static readonly Key<string?> Reason = Of(s_withShare, note => Table.Add("reason", Optional, PageOneForms.Reason, note("why this share was chosen; stands after a colon"), "\"a result that moves further is seen at the next draw and changes no dose by itself\""));
    public static readonly Key<DecisionRule> Rule = Of([Bias, Individual], note => Table.Add("rule", Optional, Word(FileWords.DecisionRules).Or(DecisionRule.Confidence), note("what decides; confidence when not given"), "\"confidence\""));
    public static readonly Key<string?> WithoutLevels = Of([Bias], note => Table.Add("without_levels", Optional, OptionalText, note("why the mean is judged without decision levels where lock asks for them"), "\"the range is studied in a trial of its own: LAB-17\""));
    public static readonly Key<ImmutableArray<decimal>> Levels = Of([DecisionLevel, Reclassification], note => Table.Add("levels", Optional, Ascending("levels"), note("the levels; the analyte's when not given"), "[2.0, 3.0]"));
    public static readonly Key<decimal?> ZoneInUnit = Of([Reclassification], note => Table.Add("zone_in_unit", Optional, Number(NumberRange.AboveZero).OrNone(), note("how far from a level, in the unit, one of the two results must lie for a change of side to be clear; what imprecision explains when not given"), "0.2"));
    public static readonly Key<SideDirection> Direction = Of([Reclassification], note => Table.Add("direction", Optional, Word(FileWords.SideDirections).Or(SideDirection.Both), note("which changes of side count: down from a level or above it to below, up the other way; both when not given"), "\"down\""));
    public static readonly Key<bool> LevelsTogether = Of([Reclassification], note => Table.Add("levels_together", Optional, Flag, note("whether, beside each level by itself, all levels are judged together: a specimen that clearly changes side of any of them counts once"), "true"));
    public static readonly TableKey Near = Of([Reclassification], note => Table.AddTable("near", Optional, NearKeys.Table, note("count only specimens whose baseline is near the levels; the others only dilute the share"), "{ range = [0.50, 1.00], specimens_min = 46 }"));
    public static readonly Key<ImmutableArray<decimal>> Cutoffs = Of([Classification], note => Table.Add("cutoffs", Depends, Ascending("cutoffs"), note("where each class above the lowest begins; needed for numbers"), "[1.2]"));
    public static readonly Key<int> WeakPositivesMinimum = Of([Classification], note => Table.Add("weak_positives_min", OfSomeKinds, Whole(0, 100_000), note("fewest specimens in the class above the lowest"), "5"));
    public static readonly Key<ImmutableArray<DriftShape>> Shapes = Of([Drift], note => Table.Add("shapes", OfSomeKinds, WordsOf(FileWords.DriftShapes), note("shapes of change that must all pass"), "[\"logarithmic\", \"linear\"]"));
    // csharpier-ignore-end

    /// <summary>The keys that only some kinds have, for one of these kinds.</summary>
    public static ImmutableArray<Key> OfKind(CriterionKind kind) =>
        [.. OfKinds.Where(entry => entry.Kinds.Contains(kind)).Select(entry => entry.Key)];

    /// <summary>The keys that only other kinds have.</summary>
    public static IEnumerable<Key> OfOtherKindsThan(CriterionKind kind) =>
        OfKinds.Where(entry => !entry.Kinds.Contains(kind)).Select(entry => entry.Key);

    /// <summary>The key of the share that a criterion on shares holds.</summary>
    public static Key ShareOf(Criterion criterion) =>
        OfKind(criterion.Kind).Contains(SharePercentMaximum)
            ? SharePercentMaximum
            : SharePercentMinimum;

    /// <summary>The key under which a kind names its analytes: with their limits where it holds them to limits.</summary>
    public static Key AnalytesOf(CriterionKind kind) =>
        OfKind(kind).Contains(Analytes) ? Analytes : Limits;

    private static TKey Of<TKey>(
        ImmutableArray<CriterionKind> kinds,
        Func<Func<string, string>, TKey> declare
    )
        where TKey : Key
    {
        var words = string.Join(", ", kinds.Select(FileWords.CriterionKinds.Write));
        var key = declare(note => $"{words}: {note}");
        OfKinds.Add((key, kinds));
        return key;
    }
}

/// <summary>The keys of "near".</summary>
internal static class NearKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<(decimal Lowest, decimal Highest)> Range = Table.Add("range", Required, Interval(NumberRange.Any, allowEqual: false), "lowest and highest baseline that counts, in the unit", "[0.50, 1.00]");
    public static readonly Key<int> SpecimensMinimum = Table.Add("specimens_min", Required, Whole(1, 100_000), "fewest such specimens; with fewer the criterion is inconclusive, never met", "46");
    // csharpier-ignore-end
}
