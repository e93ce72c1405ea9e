using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads limits and criteria of protocol.toml.</summary>
internal static class CriterionReader
{
    public static Limit ReadLimit(TomlTable table)
    {
        var limit = new Limit(
            Id: table.RequireText("id"),
            Percent: table.OptionalDecimal("percent", NumberRange.LimitPercent),
            AbsoluteInUnit: table.OptionalDecimal("absolute_in_unit", NumberRange.AboveZero),
            Source: table.RequireText("source")
        );
        if (!table.Has("percent") && !table.Has("absolute_in_unit"))
        {
            table.Remark(
                "percent",
                ProtocolQueries.LimitWithoutAmount,
                "",
                $"The limit \"{limit.Id}\" has neither \"percent\" nor \"absolute_in_unit\".",
                "Give percent, absolute_in_unit or both."
            );
        }

        return limit;
    }

    /// <summary>Reads a criterion; null when its kind is not known.</summary>
    public static Criterion? Read(TomlTable table)
    {
        var id = table.RequireText("id");
        var kind = table.RequireChoice("kind", FileWords.CriterionKinds);
        var limits = ReadLimitChoices(
            table.RequireTable("limits", ProtocolKeys.CriterionLimits),
            table
        );
        var groups = table.OptionalTexts("groups");
        var confidence = table.RequireConfidence("confidence");
        return table.IsSound("kind")
            ? kind switch
            {
                CriterionKind.Bias => ReadBias(table, id, limits, groups, confidence),
                _ => ReadIndividual(table, id, limits, groups, confidence),
            }
            : null;
    }

    private static BiasCriterion ReadBias(
        TomlTable table,
        string id,
        ImmutableArray<LimitChoice> limits,
        ImmutableArray<string> groups,
        double confidence
    )
    {
        RefuseKeyOfOtherKind(table, "share_percent_min", "bias");
        return new(id, limits, groups, confidence, table.RequireChoice("scale", FileWords.Scales));
    }

    private static IndividualCriterion ReadIndividual(
        TomlTable table,
        string id,
        ImmutableArray<LimitChoice> limits,
        ImmutableArray<string> groups,
        double confidence
    )
    {
        RefuseKeyOfOtherKind(table, "scale", "individual");
        return new(
            id,
            limits,
            groups,
            confidence,
            table.RequireDecimal("share_percent_min", NumberRange.RequiredShare)
        );
    }

    private static ImmutableArray<LimitChoice> ReadLimitChoices(
        TomlTable table,
        TomlTable criterion
    )
    {
        if (criterion.IsSound("limits") && table.Keys.IsEmpty)
        {
            criterion.Fault(
                "limits",
                FileQueries.EmptyList,
                "",
                "The criterion names no analyte.",
                "Write limits = { ANALYTE = \"LIMIT\" }."
            );
        }

        return
        [
            .. table.Keys.Select(analyte => new LimitChoice(analyte, table.RequireText(analyte))),
        ];
    }

    private static void RefuseKeyOfOtherKind(TomlTable table, string key, string kind)
    {
        if (table.Has(key))
        {
            table.Fault(
                key,
                FileQueries.UnknownKey,
                key,
                $"\"{key}\" has no meaning for a criterion of kind \"{kind}\".",
                "Remove it, or correct the kind."
            );
        }
    }
}
