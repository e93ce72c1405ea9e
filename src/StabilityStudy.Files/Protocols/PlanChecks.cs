namespace StabilityStudy.Files.Protocols;

/// <summary>Checks that the plan can be carried out: times, days and tubes.</summary>
internal static class PlanChecks
{
    private const int UsualDays = 5;

    public static void Check(ProtocolDraft draft)
    {
        CheckTimePoints(draft);
        CheckTolerance(draft);
        CheckBaseline(draft);
        CheckStepAndDays(draft);
        CheckTubePlan(draft);
    }

    private static void CheckTimePoints(ProtocolDraft draft)
    {
        var delays = draft.TimePoints.Select(point => point.Delay).ToArray();
        if (
            draft.Root.IsSound(ProtocolKeys.TimePoints)
            && (
                delays[0] <= TimeSpan.Zero
                || delays.Zip(delays.Skip(1)).Any(p => p.First >= p.Second)
            )
        )
        {
            draft.Root.Fault(
                ProtocolKeys.TimePoints,
                ProtocolQueries.TimePointsOrder,
                string.Join(", ", draft.TimePoints),
                "The time points are not above zero, different and ascending."
            );
        }
    }

    private static void CheckTolerance(ProtocolDraft draft)
    {
        var steps = draft.Tolerance.Later;
        if (steps.Zip(steps.Skip(1)).Any(pair => pair.First.From >= pair.Second.From))
        {
            draft.Root.Fault(
                ProtocolKeys.Tolerance,
                ProtocolQueries.TimePointsOrder,
                string.Join(", ", steps.Select(step => DurationText.Format(step.From))),
                "The delays in \"later\" are not different and ascending."
            );
        }
    }

    private static void CheckBaseline(ProtocolDraft draft)
    {
        if (
            draft.Root.IsSound(ProtocolKeys.TimePoints)
            && draft.Root.IsSound(ProtocolKeys.BaselineWithin)
            && (
                draft.BaselineWithin >= draft.TimePoints[0].Delay
                || draft.BaselineWithin <= TimeSpan.Zero
            )
        )
        {
            draft.Root.Fault(
                ProtocolKeys.BaselineWithin,
                ProtocolQueries.BaselineTooLate,
                DurationText.Format(draft.BaselineWithin),
                $"The baseline must be tested above zero and before the first time point, {draft.TimePoints[0]}."
            );
        }
    }

    private static void CheckStepAndDays(ProtocolDraft draft)
    {
        if (draft.Root.IsSound(ProtocolKeys.WindowStep) && draft.WindowStep <= TimeSpan.Zero)
        {
            draft.Root.Fault(
                ProtocolKeys.WindowStep,
                FileQueries.OutOfRange,
                DurationText.Format(draft.WindowStep),
                "\"window_step\" must be above zero.",
                "Write the step to which a window is rounded down, such as \"30 min\"."
            );
        }

        if (draft.Root.IsSound(ProtocolKeys.MinimumDays) && draft.MinimumDays < UsualDays)
        {
            draft.Root.Remark(
                ProtocolKeys.MinimumDays,
                ProtocolQueries.FewDays,
                FormattableString.Invariant($"{draft.MinimumDays}"),
                "Fewer than five collection days are asked for, so that an error of one day weighs heavily."
            );
        }
    }

    private static void CheckTubePlan(ProtocolDraft draft)
    {
        if (!draft.Root.IsSound(ProtocolKeys.TubePlan))
        {
            return;
        }

        foreach (var (table, storage) in draft.Storages.Items)
        {
            var unfit = draft.TubePlan switch
            {
                TubePlan.OneTubeRetested => storage.State == StorageState.WholeBlood,
                TubePlan.Aliquots => storage.State != StorageState.SeparatedPlasma,
                TubePlan.TubePerTimePoint => false,
            };
            if (table.IsSound(StorageKeys.State) && unfit)
            {
                table.Fault(
                    StorageKeys.State,
                    ProtocolQueries.TubePlanDoesNotFit,
                    FileWords.States.Write(storage.State),
                    draft.TubePlan == TubePlan.OneTubeRetested
                        ? "Spinning ends the storage of whole blood, so one tube cannot be tested again."
                        : "Aliquots are portions of separated plasma.",
                    "Plan \"a tube per time point\", or another storage state."
                );
            }
        }
    }
}
