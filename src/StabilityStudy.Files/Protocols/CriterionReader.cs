using System.Collections.Immutable;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a criterion of protocol.toml.</summary>
internal static class CriterionReader
{
    private const int MostWeakPositives = 100_000;

    private static readonly ImmutableArray<string> KeysOfEveryKind =
    [
        "id",
        "kind",
        "groups",
        "confidence",
    ];

    /// <summary>Reads a criterion; null when its kind is not known.</summary>
    public static Criterion? Read(TomlTable table)
    {
        var id = table.RequireText("id");
        var kind = table.RequireChoice("kind", FileWords.CriterionKinds);
        var groups = table.OptionalTexts("groups");
        var confidence = table.RequireConfidence("confidence");
        if (!table.IsSound("kind"))
        {
            return null;
        }

        RefuseKeysOfOtherKinds(table, kind);
        var limits = kind is CriterionKind.Reclassification or CriterionKind.Classification
            ? AnalyteChoices.ReadWithoutLimit(table)
            : AnalyteChoices.ReadWithLimit(table);
        return kind switch
        {
            CriterionKind.Bias => new BiasCriterion(
                id,
                limits,
                groups,
                confidence,
                table.RequireChoice("scale", FileWords.Scales)
            )
            {
                Rule = ReadRule(table),
            },
            CriterionKind.Individual => ReadIndividual(table, id, limits, groups, confidence),
            CriterionKind.DecisionLevel => new DecisionLevelCriterion(
                id,
                limits,
                groups,
                confidence,
                ReadLevels(table)
            ),
            CriterionKind.Reclassification => new ReclassificationCriterion(
                id,
                limits,
                groups,
                confidence,
                table.RequireDecimal("share_percent_max", NumberRange.LargestShare),
                ReadLevels(table)
            ),
            CriterionKind.Classification => new ClassificationCriterion(
                id,
                limits,
                groups,
                confidence,
                table.RequireDecimal("share_percent_min", NumberRange.RequiredShare),
                AscendingNumbers.Read(table, "cutoffs", "cutoffs"),
                table.RequireWhole("weak_positives_min", 0, MostWeakPositives)
            ),
            _ => new DriftCriterion(
                id,
                limits,
                groups,
                confidence,
                table.RequireChoices("shapes", FileWords.DriftShapes)
            ),
        };
    }

    /// <summary>The keys that only some kinds have, for one of these kinds.</summary>
    internal static ImmutableArray<string> KeysOf(CriterionKind kind) =>
        kind switch
        {
            CriterionKind.Bias => ["limits", "scale", "rule"],
            CriterionKind.Individual => ["limits", "share_percent_min", "rule"],
            CriterionKind.DecisionLevel => ["limits", "levels"],
            CriterionKind.Reclassification => ["analytes", "share_percent_max", "levels"],
            CriterionKind.Classification =>
            [
                "analytes",
                "share_percent_min",
                "cutoffs",
                "weak_positives_min",
            ],
            _ => ["limits", "shapes"],
        };

    private static IndividualCriterion ReadIndividual(
        TomlTable table,
        string id,
        ImmutableArray<LimitChoice> limits,
        ImmutableArray<string> groups,
        double confidence
    )
    {
        var rule = ReadRule(table);
        var share = table.RequireDecimal("share_percent_min", NumberRange.RequiredPointShare);
        if (table.IsSound("share_percent_min") && rule == DecisionRule.Confidence && share == 100)
        {
            table.Fault(
                "share_percent_min",
                FileQueries.OutOfRange,
                "100",
                "No number of specimens can show a share of 100 % with confidence.",
                "Write a share below 100, or rule = \"point only\" beside another individual criterion."
            );
        }

        return new(id, limits, groups, confidence, share) { Rule = rule };
    }

    private static DecisionRule ReadRule(TomlTable table) =>
        table.OptionalChoice("rule", FileWords.DecisionRules) ?? DecisionRule.Confidence;

    private static ImmutableArray<decimal> ReadLevels(TomlTable table) =>
        AscendingNumbers.Read(table, "levels", "levels");

    private static void RefuseKeysOfOtherKinds(TomlTable table, CriterionKind kind)
    {
        var word = FileWords.CriterionKinds.Write(kind);
        var others = ProtocolKeys
            .Criterion.Keys.Except(KeysOfEveryKind)
            .Except(KeysOf(kind))
            .Where(table.Has);
        foreach (var key in others)
        {
            table.Fault(
                key,
                FileQueries.UnknownKey,
                key,
                $"\"{key}\" has no meaning for a criterion of kind \"{word}\".",
                $"Remove it, or correct the kind; \"{word}\" has {string.Join(", ", KeysOf(kind))}."
            );
        }
    }
}
