using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a limit of protocol.toml.</summary>
internal static class LimitReader
{
    public static Limit Read(TomlTable table)
    {
        var limit = new Limit(
            Id: table.RequireText("id"),
            Percent: table.OptionalDecimal("percent", NumberRange.LimitPercent),
            AbsoluteInUnit: table.OptionalDecimal("absolute_in_unit", NumberRange.AboveZero),
            Source: table.RequireText("source")
        )
        {
            Basis = table.OptionalTable("biological_variation", ProtocolKeys.LimitBasis)
                is { } basis
                ? ReadBasis(basis)
                : null,
        };
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

        if (
            limit is { Basis: { } source, Percent: { } percent }
            && table.IsSound("percent")
            && source is { WithinCvPercent: > 0, BetweenCvPercent: > 0 }
            && (double)percent > source.GoalPercent
        )
        {
            table.Remark(
                "percent",
                ProtocolQueries.LimitAboveGoal,
                FormattableString.Invariant($"{percent}"),
                FormattableString.Invariant(
                    $"The limit \"{limit.Id}\" of {percent} % is above the goal that its biological_variation gives, {source.GoalPercent:0.000} %."
                ),
                FormattableString.Invariant(
                    $"Write at most {Math.Floor(source.GoalPercent * 100) / 100:0.00}, or take biological_variation away and name the true source."
                )
            );
        }

        return limit;
    }

    private static LimitBasis ReadBasis(TomlTable table) =>
        new(
            table.RequireDecimal("cvi", NumberRange.Percent),
            table.RequireDecimal("cvg", NumberRange.Percent),
            table.RequireChoice("grade", FileWords.GoalGrades),
            table.RequireChoice("goal", FileWords.GoalKinds)
        );
}
