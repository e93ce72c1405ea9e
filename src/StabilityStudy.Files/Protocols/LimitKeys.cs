using StabilityStudy.Statistics.Agreement;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of a limit.</summary>
internal static class LimitKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in criteria", "\"aptt-bias\"");
    public static readonly Key<decimal?> Percent = Table.Add("percent", Depends, Number(NumberRange.LimitPercent).OrNone(), "percent of the baseline; this, absolute_in_unit or both", "7.5");
    public static readonly Key<decimal?> AbsoluteInUnit = Table.Add("absolute_in_unit", Depends, Number(NumberRange.AboveZero).OrNone(), "amount in the unit; the greater of both counts", "2.0");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where the limit comes from", "\"director's decision of 2026-01-15\"");
    public static readonly Key<string?> ChosenBy = Table.Add("chosen_by", Optional, PageOneForms.Chooser, "who chose the limit: code of a person in study.toml, or a role", "\"MD1\"");
    public static readonly Key<string?> Reason = Table.Add("reason", Optional, PageOneForms.Reason, "why this limit was chosen; stands after a colon", "\"a larger change of the mean could change a dose\"");
    public static readonly TableKey BiologicalVariation = Table.AddTable("biological_variation", Optional, BiologicalVariationKeys.Table, "the variation from which the percentage follows; a percentage above the goal stops the study", "{ cvi = 5.8, cvg = 8.4, grade = \"desirable\", goal = \"bias\" }");
    public static readonly TableKey Alternatives = Table.AddTables("alternatives", Optional, OtherLimitKeys.Table, "limits that could have been chosen; nothing is concluded from them", "[{ name = \"published rule\", percent = 10, source = \"PMID 24463857\", why_not = \"uses up what the laboratory leaves\" }]");
    // csharpier-ignore-end
}

/// <summary>The keys of "alternatives".</summary>
internal static class OtherLimitKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "what it is called", "\"published rule\"");
    public static readonly Key<decimal?> Percent = Table.Add("percent", Optional, Number(NumberRange.LimitPercent).OrNone(), "percent of the baseline; neither amount where none can be computed", "10");
    public static readonly Key<decimal?> AbsoluteInUnit = Table.Add("absolute_in_unit", Optional, Number(NumberRange.AboveZero).OrNone(), "amount in the unit", "0.5");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where it comes from", "\"PMID 24463857\"");
    public static readonly Key<string> WhyNot = Table.Add("why_not", Required, Text, "why it was not chosen", "\"uses up what the laboratory leaves\"");
    // csharpier-ignore-end

    public static OtherLimit Read(TomlTable table) =>
        new(
            table.Read(Name),
            table.Read(Percent),
            table.Read(AbsoluteInUnit),
            table.Read(Source),
            table.Read(WhyNot)
        );
}

/// <summary>The keys of "biological_variation".</summary>
internal static class BiologicalVariationKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<decimal> WithinCv = Table.Add("cvi", Required, Number(NumberRange.Percent), "within healthy persons, percent", "5.8");
    public static readonly Key<decimal> BetweenCv = Table.Add("cvg", Required, Number(NumberRange.Percent), "between healthy persons, percent", "8.4");
    public static readonly Key<GoalGrade> Grade = Table.Add("grade", Required, Word(FileWords.GoalGrades), "how demanding the goal is", "\"desirable\"");
    public static readonly Key<GoalKind> Goal = Table.Add("goal", Required, Word(FileWords.GoalKinds), "bias is for a mean, total error for single specimens", "\"bias\"");
    // csharpier-ignore-end
}
