namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a limit of protocol.toml.</summary>
internal static class LimitReader
{
    public static Limit Read(TomlTable table)
    {
        var limit = new Limit(
            Id: table.Read(LimitKeys.Id),
            Percent: table.Read(LimitKeys.Percent),
            AbsoluteInUnit: table.Read(LimitKeys.AbsoluteInUnit),
            Source: table.Read(LimitKeys.Source)
        )
        {
            Basis = table.OptionalTable(LimitKeys.BiologicalVariation) is { } basis
                ? ReadBasis(basis)
                : null,
            Rationale = new(table.Read(LimitKeys.ChosenBy), table.Read(LimitKeys.Reason)),
            Alternatives = [.. table.Tables(LimitKeys.Alternatives).Select(OtherLimitKeys.Read)],
        };
        if (!table.Has(LimitKeys.Percent) && !table.Has(LimitKeys.AbsoluteInUnit))
        {
            table.Remark(
                LimitKeys.Percent,
                ProtocolQueries.LimitWithoutAmount,
                "",
                $"The limit \"{limit.Id}\" has neither \"percent\" nor \"absolute_in_unit\"."
            );
        }

        if (
            limit is { Basis: { } source, Percent: { } percent }
            && table.IsSound(LimitKeys.Percent)
            && source is { WithinCvPercent: > 0, BetweenCvPercent: > 0 }
            && (double)percent > source.GoalPercent
        )
        {
            table.Remark(
                LimitKeys.Percent,
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
            table.Read(BiologicalVariationKeys.WithinCv),
            table.Read(BiologicalVariationKeys.BetweenCv),
            table.Read(BiologicalVariationKeys.Grade),
            table.Read(BiologicalVariationKeys.Goal)
        );
}
