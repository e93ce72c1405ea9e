using StabilityStudy.Core.Study;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Facts;

/// <summary>Holds what study.toml says of tubes, spinning, storage and thawing to what the protocol plans, and to common practice where it plans nothing.</summary>
internal static class HandlingChecks
{
    public static void Check(FactsDraft facts, ProtocolDraft? protocol)
    {
        // A plan that could not be read as a whole is corrected first.
        var plan = protocol?.Conduct;
        CheckTube(facts, plan?.Draw);
        CheckSpinning(facts, plan?.Spin);
        CheckThawing(facts, plan?.Freezing);
        CheckTemperatures(facts, protocol);
    }

    private static void CheckTube(FactsDraft facts, Part<DrawRules>? plan)
    {
        if (
            facts.Handling.Tube is not var (table, tube)
            || !table.IsSound(CollectionTubeKeys.CitratePercent)
            || plan?.Table.IsSound(DrawKeys.CitratePercent) == false
        )
        {
            return;
        }

        var planned = plan?.Value.CitratePercent ?? CollectionTube.UsualCitratePercent;
        if (tube.CitratePercent != planned)
        {
            table.Remark(
                CollectionTubeKeys.CitratePercent,
                HandlingQueries.CitrateNotAsPlanned,
                FormattableString.Invariant($"{tube.CitratePercent}"),
                FormattableString.Invariant(
                    $"The tubes held {tube.CitratePercent} % citrate; {(plan is null ? "usual are" : "the protocol plans")} {planned} %."
                )
            );
        }
    }

    private static void CheckSpinning(FactsDraft facts, Part<SpinRules>? spin)
    {
        if (facts.Handling.Spinning is not var (table, spun))
        {
            return;
        }

        var plan = spin?.Value;
        var most = plan?.PlateletsBelow ?? SpinRules.UsualPlateletsBelow;
        if (table.IsSound(SpinningKeys.Platelets) && spun.Platelets >= most)
        {
            table.Remark(
                SpinningKeys.Platelets,
                HandlingQueries.ResidualPlatelets,
                FormattableString.Invariant($"{spun.Platelets}"),
                FormattableString.Invariant(
                    $"Up to {spun.Platelets} × 10⁹/L platelets were left in the plasma; {(plan?.PlateletsBelow is null ? "usual are" : "the protocol plans")} fewer than {most}."
                )
            );
        }

        if (
            spin is null
            || plan is null
            || !spin.Table.IsSound(SpinKeys.Conditions.RelativeForce)
            || !spin.Table.IsSound(SpinKeys.Conditions.Duration)
        )
        {
            return;
        }

        string[] other =
        [
            .. table.IsSound(SpinningKeys.Conditions.RelativeForce)
            && spun.RelativeForce != plan.RelativeForce
                ?
                [
                    FormattableString.Invariant(
                        $"{spun.RelativeForce} × g, planned {plan.RelativeForce}"
                    ),
                ]
                : Array.Empty<string>(),
            .. table.IsSound(SpinningKeys.Conditions.Duration) && spun.Duration != plan.Duration
                ?
                [
                    $"{DurationText.Format(spun.Duration)}, planned {DurationText.Format(plan.Duration)}",
                ]
                : Array.Empty<string>(),
            .. spun.Spins != plan.Spins
                ? [$"spun {Times(spun.Spins)}, planned {Times(plan.Spins)}"]
                : Array.Empty<string>(),
            .. spun.Celsius is { } range && plan.Celsius is { } planned && !planned.Holds(range)
                ? [$"{Words(range)}, planned {Words(planned)}"]
                : Array.Empty<string>(),
        ];
        if (other.Length > 0)
        {
            facts.Root.Remark(
                FactsKeys.Spinning,
                HandlingQueries.SpinNotAsPlanned,
                "",
                $"Tubes were spun otherwise than planned: {string.Join("; ", other)}."
            );
        }
    }

    private static void CheckThawing(FactsDraft facts, Part<FreezingRules>? freezing)
    {
        if (
            freezing is not var (planned, plan)
            || facts.Handling.Thawing is not var (table, thawed)
        )
        {
            return;
        }

        if (
            table.IsSound(ThawingKeys.Celsius)
            && planned.IsSound(FreezingKeys.ThawCelsius)
            && !plan.ThawCelsius.Holds(thawed.Celsius)
        )
        {
            table.Remark(
                ThawingKeys.Celsius,
                HandlingQueries.ThawNotAsPlanned,
                Words(thawed.Celsius),
                $"Portions were thawed at {Words(thawed.Celsius)}, planned {Words(plan.ThawCelsius)}."
            );
        }

        if (
            table.IsSound(ThawingKeys.Duration)
            && planned.IsSound(FreezingKeys.ThawFor)
            && thawed.Duration != plan.ThawFor
        )
        {
            table.Remark(
                ThawingKeys.Duration,
                HandlingQueries.ThawNotAsPlanned,
                DurationText.Format(thawed.Duration),
                $"Portions were thawed for {DurationText.Format(thawed.Duration)}, planned {DurationText.Format(plan.ThawFor)}."
            );
        }
    }

    private static void CheckTemperatures(FactsDraft facts, ProtocolDraft? protocol)
    {
        var storages = protocol?.Storages.Codes(StorageKeys.Id, storage => storage.Id);
        foreach (var (table, recorded) in facts.Handling.Temperatures.Items)
        {
            References.Check(table, TemperatureKeys.Storage, recorded.Storage, "storage", storages);
            var planned = protocol?.Storages.Items.FirstOrDefault(item =>
                item.Value.Id == recorded.Storage && item.Table.IsSound(StorageKeys.Celsius)
            );
            if (
                planned?.Value is { } storage
                && table.IsSound(TemperatureKeys.Celsius)
                && new CelsiusRange(storage.LowestCelsius, storage.HighestCelsius) is var range
                && !range.Holds(recorded.Celsius)
            )
            {
                table.Remark(
                    TemperatureKeys.Celsius,
                    HandlingQueries.TemperatureNotAsPlanned,
                    Words(recorded.Celsius),
                    $"The storage \"{storage.Id}\" was at {Words(recorded.Celsius)}, planned {Words(range)}."
                );
            }
        }
    }

    private static string Times(int spins) => spins == 1 ? "once" : "twice";

    private static string Words(CelsiusRange range) =>
        FormattableString.Invariant($"{range.Lowest} to {range.Highest} °C");
}
