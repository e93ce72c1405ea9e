using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a criterion of protocol.toml.</summary>
internal static class CriterionReader
{
    /// <summary>Reads a criterion; null when its kind is not known.</summary>
    public static Criterion? Read(TomlTable table)
    {
        var id = table.Read(CriterionKeys.Id);
        var kind = table.Read(CriterionKeys.Kind);
        var groups = table.Read(CriterionKeys.Groups);
        var confidence = table.Read(CriterionKeys.Confidence);
        if (!table.IsSound(CriterionKeys.Kind))
        {
            return null;
        }

        RefuseKeysOfOtherKinds(table, kind);
        var limits =
            CriterionKeys.AnalytesOf(kind) == CriterionKeys.Analytes
                ? AnalyteChoices.ReadWithoutLimit(table)
                : AnalyteChoices.ReadWithLimit(table);
        Criterion criterion = kind switch
        {
            CriterionKind.Bias => new BiasCriterion(
                id,
                limits,
                groups,
                confidence,
                table.Read(CriterionKeys.Scale)
            )
            {
                Rule = table.Read(CriterionKeys.Rule),
                WithoutLevels = table.Read(CriterionKeys.WithoutLevels),
            },
            CriterionKind.Individual => ReadIndividual(table, id, limits, groups, confidence),
            CriterionKind.DecisionLevel => new DecisionLevelCriterion(
                id,
                limits,
                groups,
                confidence,
                table.Read(CriterionKeys.Levels)
            ),
            CriterionKind.Reclassification => new ReclassificationCriterion(
                id,
                limits,
                groups,
                confidence,
                table.Read(CriterionKeys.SharePercentMaximum),
                table.Read(CriterionKeys.Levels)
            )
            {
                ZoneInUnit = table.Read(CriterionKeys.ZoneInUnit),
                Direction = table.Read(CriterionKeys.Direction),
                LevelsTogether = table.Read(CriterionKeys.LevelsTogether),
                Near = table.OptionalTable(CriterionKeys.Near) is { } near ? ReadNear(near) : null,
            },
            CriterionKind.Classification => new ClassificationCriterion(
                id,
                limits,
                groups,
                confidence,
                ReadShareBelow100(table),
                table.Read(CriterionKeys.Cutoffs),
                table.Read(CriterionKeys.WeakPositivesMinimum)
            ),
            CriterionKind.Drift => new DriftCriterion(
                id,
                limits,
                groups,
                confidence,
                table.Read(CriterionKeys.Shapes)
            ),
        };
        return criterion with
        {
            Rationale = new(table.Read(CriterionKeys.ChosenBy), table.Read(CriterionKeys.Reason)),
        };
    }

    private static NearRange ReadNear(TomlTable table)
    {
        var (lowest, highest) = table.Read(NearKeys.Range);
        return new(lowest, highest, table.Read(NearKeys.SpecimensMinimum));
    }

    private static IndividualCriterion ReadIndividual(
        TomlTable table,
        string id,
        ImmutableArray<LimitChoice> limits,
        ImmutableArray<string> groups,
        double confidence
    )
    {
        var rule = table.Read(CriterionKeys.Rule);
        var share = table.Read(CriterionKeys.SharePercentMinimum);
        if (
            table.IsSound(CriterionKeys.SharePercentMinimum)
            && rule == DecisionRule.Confidence
            && share == 100
        )
        {
            table.Fault(
                CriterionKeys.SharePercentMinimum,
                FileQueries.OutOfRange,
                "100",
                "No number of specimens can show a share of 100 % with confidence.",
                "Write a share below 100, or rule = \"point only\" beside another individual criterion."
            );
        }

        return new(id, limits, groups, confidence, share) { Rule = rule };
    }

    /// <summary>A share that must be shown with confidence, which 100 % cannot be.</summary>
    private static decimal ReadShareBelow100(TomlTable table)
    {
        var share = table.Read(CriterionKeys.SharePercentMinimum);
        if (table.IsSound(CriterionKeys.SharePercentMinimum) && share == 100)
        {
            table.Fault(
                CriterionKeys.SharePercentMinimum,
                FileQueries.OutOfRange,
                "100",
                "\"share_percent_min\" must be a share in percent, above 50 and below 100."
            );
        }

        return share;
    }

    private static void RefuseKeysOfOtherKinds(TomlTable table, CriterionKind kind)
    {
        var word = FileWords.CriterionKinds.Write(kind);
        foreach (var key in CriterionKeys.OfOtherKindsThan(kind).Where(table.Has))
        {
            table.Fault(
                key,
                FileQueries.UnknownKey,
                key.Name,
                $"\"{key.Name}\" has no meaning for a criterion of kind \"{word}\".",
                $"Remove it, or correct the kind; \"{word}\" has {string.Join(", ", CriterionKeys.OfKind(kind).Select(own => own.Name))}."
            );
        }
    }
}
