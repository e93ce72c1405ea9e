namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for a plan whose times cannot tell what they should.</summary>
internal static class PlanCautions
{
    private const decimal MostLeftOutPercent = 25;
    private const decimal WidestCelsius = 10;
    private static readonly TimeSpan UsualBaseline = TimeSpan.FromHours(1);

    public static void Check(ProtocolDraft draft)
    {
        if (draft.Root.IsSound(ProtocolKeys.TimePoints))
        {
            CheckTolerance(draft);
            CheckStep(draft);
        }

        if (draft.Root.IsSound(ProtocolKeys.BaselineWithin))
        {
            CheckBaseline(draft);
        }

        CheckTemperature(draft);
        if (draft.Conduct.LeftOutPercentMaximum > MostLeftOutPercent)
        {
            draft.Root.Remark(
                ProtocolKeys.LeftOutPercentMaximum,
                CautionQueries.MuchMayBeLeftOut,
                FormattableString.Invariant($"{draft.Conduct.LeftOutPercentMaximum}"),
                FormattableString.Invariant(
                    $"Up to {draft.Conduct.LeftOutPercentMaximum} % of the specimens may be left out of a time point."
                ),
                FormattableString.Invariant(
                    $"Allow at most {MostLeftOutPercent} %, or give the reason in a deviation of study.toml."
                )
            );
        }
    }

    private static void CheckTemperature(ProtocolDraft draft)
    {
        foreach (var (table, storage) in draft.Storages.Items)
        {
            if (
                table.IsSound(StorageKeys.Celsius)
                && storage.HighestCelsius > 0
                && storage.HighestCelsius - storage.LowestCelsius > WidestCelsius
            )
            {
                table.Remark(
                    StorageKeys.Celsius,
                    CautionQueries.TemperatureRangeWide,
                    FormattableString.Invariant(
                        $"{storage.LowestCelsius} to {storage.HighestCelsius}"
                    ),
                    FormattableString.Invariant(
                        $"The storage \"{storage.Id}\" may be at any temperature from {storage.LowestCelsius} to {storage.HighestCelsius} °C."
                    )
                );
            }
        }
    }

    private static void CheckTolerance(ProtocolDraft draft)
    {
        var early = draft.Tolerance.Early;
        var points = draft.TimePoints;
        TimeSpan Late(int at) => draft.Tolerance.LateAt(points[at]);
        TimeSpan Gap(int at) => points[at + 1].Delay - points[at].Delay;
        var before = Enumerable.Range(0, points.Length - 1).ToArray();
        if (before.Any(at => early + Late(at) >= Gap(at)))
        {
            draft.Root.Remark(
                ProtocolKeys.Tolerance,
                CautionQueries.WindowsOverlap,
                Written(draft.Tolerance),
                "With this tolerance a test can belong to two time points."
            );
        }
        else if (
            4 * early > before.Select(Gap).Prepend(points[0].Delay).Min()
            || (points.Length == 1 && 4 * Late(0) > points[0].Delay)
            || before.Any(at => 4 * Late(at) > Gap(at))
        )
        {
            draft.Root.Remark(
                ProtocolKeys.Tolerance,
                CautionQueries.WideTolerance,
                Written(draft.Tolerance),
                "The tolerance is more than a quarter of the time to the neighboring time point."
            );
        }
    }

    private static string Written(Tolerance tolerance) =>
        $"{DurationText.Format(tolerance.Early)} early, {DurationText.Format(tolerance.Late)} late"
        + string.Concat(
            tolerance.Later.Select(step =>
                $", {DurationText.Format(step.Late)} from {DurationText.Format(step.From)} on"
            )
        );

    private static void CheckStep(ProtocolDraft draft)
    {
        if (
            draft.Root.IsSound(ProtocolKeys.WindowStep)
            && draft.WindowStep > draft.TimePoints[0].Delay
        )
        {
            draft.Root.Remark(
                ProtocolKeys.WindowStep,
                CautionQueries.WindowStepTooLong,
                DurationText.Format(draft.WindowStep),
                $"A window of {draft.TimePoints[0]} rounded down to this step is nothing.",
                "Write the step to which a window is rounded down, such as \"30 min\"."
            );
        }
    }

    private static void CheckBaseline(ProtocolDraft draft)
    {
        var within = draft.BaselineWithin;
        var (shortest, owner) = draft
            .Analytes.Values.SelectMany(analyte =>
                analyte
                    .GroupWindows.Select(item => (item.Rule.Time, $"{analyte.Id}, {item.Group}"))
                    .Prepend((analyte.StandardWindow.Time, analyte.Id))
            )
            .Where(window => window.Item1 > TimeSpan.Zero)
            .DefaultIfEmpty((TimeSpan.MaxValue, ""))
            .MinBy(window => window.Item1);

        // A baseline within the hour is as early as can be asked: it may use up a window of one hour.
        if (within > shortest || (within == shortest && within > UsualBaseline))
        {
            draft.Root.Remark(
                ProtocolKeys.BaselineWithin,
                CautionQueries.BaselineBeyondStandardWindow,
                DurationText.Format(within),
                $"The baseline may be as late as today's window of {DurationText.Format(shortest)} ({owner}) ends."
            );
        }
        else if (
            (within > UsualBaseline && !StartsFromSeparatedPlasma(draft))
            || (
                draft.Root.IsSound(ProtocolKeys.TimePoints)
                && 4 * within > draft.TimePoints[0].Delay
            )
        )
        {
            draft.Root.Remark(
                ProtocolKeys.BaselineWithin,
                CautionQueries.LateBaseline,
                DurationText.Format(within),
                $"A baseline as late as {DurationText.Format(within)} hides the change before it.",
                "Ask for the baseline within one hour, and within a quarter of the first delay, or give the reason in a deviation of study.toml."
            );
        }
    }

    // Plasma has to be spun and taken off before its storage begins, and fresh plasma is tested within the standard
    // window; blood or plasma on cells changes from the first minute on.
    private static bool StartsFromSeparatedPlasma(ProtocolDraft draft) =>
        draft.Root.IsSound(ProtocolKeys.Storages)
        && !draft.Storages.Values.IsEmpty
        && draft.Storages.Values.All(storage => storage.State == StorageState.SeparatedPlasma);
}
