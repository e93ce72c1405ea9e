namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for draws, spins and thaws that a laboratory would not usually accept, or that the study has no use for.</summary>
internal static class HandlingCautions
{
    /// <summary>Common practice: at least 3 complete inversions, at most 6 anywhere seen.</summary>
    private const int UsualFewestInversions = 3;
    private const int UsualMostInversions = 6;

    /// <summary>Common practice: whole blood travels at room temperature.</summary>
    private const decimal UsualLowestCelsius = 15;

    public static void Check(ProtocolDraft draft)
    {
        CheckDraw(draft);
        CheckSpin(draft);
        CheckFreezing(draft);
    }

    private static void CheckDraw(ProtocolDraft draft)
    {
        if (draft.Conduct.Draw is not var (table, rules))
        {
            return;
        }

        if (
            table.IsSound(DrawKeys.CitratePercent)
            && rules.CitratePercent != Core.Study.CollectionTube.UsualCitratePercent
        )
        {
            Lax(
                table,
                DrawKeys.CitratePercent,
                FormattableString.Invariant($"{rules.CitratePercent}"),
                FormattableString.Invariant(
                    $"{rules.CitratePercent} % citrate is not the usual 3.2 %; more of it prolongs clotting times."
                )
            );
        }

        if (
            table.IsSound(DrawKeys.Inversions)
            && (
                rules.FewestInversions < UsualFewestInversions
                || rules.MostInversions > UsualMostInversions
            )
        )
        {
            Lax(
                table,
                DrawKeys.Inversions,
                FormattableString.Invariant($"{rules.FewestInversions}, {rules.MostInversions}"),
                "Tubes are usually inverted 3 to 5 times, gently and completely: fewer leave clots, more break cells."
            );
        }

        if (rules.Devices.Any(DrawRules.IsWingedSet) && rules.DiscardTube == DiscardTubeRule.Never)
        {
            Lax(
                table,
                DrawKeys.DiscardTube,
                "never",
                "A winged set may be used without a discard tube: the air in its tubing makes the first tube short."
            );
        }

        if (rules.Transport is { } transport && transport.Lowest < UsualLowestCelsius)
        {
            Lax(
                table,
                DrawKeys.Transport,
                FormattableString.Invariant($"{transport.Lowest}"),
                FormattableString.Invariant(
                    $"Tubes may travel at {transport.Lowest} °C; whole blood for coagulation tests usually travels at room temperature."
                )
            );
        }
    }

    private static void CheckSpin(ProtocolDraft draft)
    {
        if (
            draft.Conduct.Spin is
            ({ } table, { PlateletsBelow: > SpinRules.UsualPlateletsBelow and var platelets })
        )
        {
            Lax(
                table,
                SpinKeys.PlateletsBelow,
                FormattableString.Invariant($"{platelets}"),
                FormattableString.Invariant(
                    $"Plasma for coagulation tests usually holds fewer than {SpinRules.UsualPlateletsBelow} × 10⁹/L platelets."
                )
            );
        }
    }

    private static void CheckFreezing(ProtocolDraft draft)
    {
        if (
            draft.Conduct.Freezing is not var (table, rules)
            || !draft.Root.IsSound(ProtocolKeys.Storages)
            || draft.Storages.Items.Any(item => !item.Table.IsSound(StorageKeys.Celsius))
        )
        {
            return;
        }

        var thaws = draft.Conduct.TimeOrigin == TimeOrigin.Thawing;
        if (!thaws && draft.Storages.Values.All(storage => storage.HighestCelsius >= 0))
        {
            draft.Root.Fault(
                ProtocolKeys.Freezing,
                ProtocolQueries.FreezingDoesNotFit,
                "",
                "No storage of the protocol is frozen.",
                "Remove \"freezing\", or correct the temperature of the storage."
            );
        }
        else if (thaws && rules.TestWithin is { } within)
        {
            table.Fault(
                FreezingKeys.TestWithin,
                ProtocolQueries.FreezingDoesNotFit,
                DurationText.Format(within),
                "The time after thawing is what this protocol studies.",
                "Remove \"test_within\"; the time points say when portions are tested."
            );
        }
    }

    private static void Lax(TomlTable table, Key key, string observed, string message) =>
        table.Remark(key, CautionQueries.HandlingLax, observed, message);
}
