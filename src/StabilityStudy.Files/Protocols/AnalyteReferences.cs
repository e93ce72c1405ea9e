namespace StabilityStudy.Files.Protocols;

/// <summary>Checks that analytes refer to time points, groups, storages and analytes of the protocol.</summary>
internal static class AnalyteReferences
{
    public static void Check(ProtocolDraft draft)
    {
        var analytes = draft.Analytes.Codes(AnalyteKeys.Id, analyte => analyte.Id);
        var groups = draft.Groups.Codes(GroupKeys.Id, group => group.Id);
        var storages = draft.Storages.Codes(StorageKeys.Id, storage => storage.Id);
        foreach (var (table, analyte) in draft.Analytes.Items)
        {
            CheckTimePoints(table, AnalyteKeys.TimePoints, analyte.Id, analyte.TimePoints, draft);
            foreach (var group in analyte.Groups)
            {
                References.Check(table, AnalyteKeys.Groups, group, "group", groups);
            }

            foreach (var storage in analyte.Storages)
            {
                References.Check(table, AnalyteKeys.Storages, storage, "storage", storages);
            }

            foreach (var window in analyte.GroupWindows)
            {
                References.Check(table, AnalyteKeys.GroupWindows, window.Group, "group", groups);
                References.Check(
                    table,
                    AnalyteKeys.GroupWindows,
                    window.Storage ?? "",
                    "storage",
                    storages
                );
                RefuseTimesOfStorage(table, window);
                CheckTimePoints(
                    table,
                    AnalyteKeys.GroupWindows,
                    $"{analyte.Id} in group {window.Group}",
                    window.TimePoints,
                    draft
                );
            }

            foreach (var range in analyte.PlannedRanges)
            {
                References.Check(table, AnalyteKeys.PlannedRanges, range.Group, "group", groups);
            }

            CheckLevels(table, analyte, groups);
            CheckPlannedNumbers(table, analyte, draft, groups);
            foreach (var window in analyte.OtherWindows)
            {
                References.Check(
                    table,
                    AnalyteKeys.OtherWindows,
                    window.Group ?? "",
                    "group",
                    groups
                );
            }

            CheckExpectedChanges(table, analyte, draft, groups, storages);
            CheckRatio(table, analyte, draft);
            References.Check(
                table,
                AnalyteKeys.RatioOf,
                analyte.RatioOf ?? "",
                "analyte",
                analytes
            );
            RequireOnce(
                table,
                AnalyteKeys.GroupWindows,
                analyte.GroupWindows.Select(item => $"{item.Group} {item.Storage}".TrimEnd())
            );
            RequireOnce(
                table,
                AnalyteKeys.PlannedRanges,
                analyte.PlannedRanges.Select(item => item.Group)
            );
            RequireOnce(table, AnalyteKeys.Groups, analyte.Groups);
            RequireOnce(table, AnalyteKeys.Storages, analyte.Storages);
        }
    }

    /// <summary>A group is tested at the same times in all its storages.</summary>
    private static void RefuseTimesOfStorage(TomlTable table, GroupWindow window)
    {
        if (window is { Storage: { } storage, TimePoints.IsEmpty: false })
        {
            table.Fault(
                AnalyteKeys.GroupWindows,
                FileQueries.UnknownKey,
                storage,
                $"The rule of group {window.Group} in storage {storage} has \"{GroupWindowKeys.TimePoints.Name}\", and a group is tested at the same times in every storage.",
                "Write the times into an entry of the group without a storage."
            );
        }
    }

    /// <summary>The numbers planned in parts of the range of a group are no more than its specimens.</summary>
    private static void CheckPlannedNumbers(
        TomlTable table,
        Analyte analyte,
        ProtocolDraft draft,
        ImmutableArray<string>? groups
    )
    {
        foreach (var part in analyte.PlannedNumbers)
        {
            References.Check(table, AnalyteKeys.PlannedNumbers, part.Group, "group", groups);
        }

        foreach (var group in draft.Groups.Values)
        {
            var planned = analyte
                .PlannedNumbers.Where(part => part.Group == group.Id)
                .Sum(part => part.Specimens);
            if (planned > group.Specimens)
            {
                table.Fault(
                    AnalyteKeys.PlannedNumbers,
                    FileQueries.OutOfRange,
                    FormattableString.Invariant($"{planned}"),
                    FormattableString.Invariant(
                        $"{planned} specimens are planned in parts of the range, and only {group.Specimens} for \"{group.Id}\"."
                    ),
                    "Plan more specimens for the group, or fewer in its parts."
                );
            }
        }
    }

    private static void CheckExpectedChanges(
        TomlTable table,
        Analyte analyte,
        ProtocolDraft draft,
        ImmutableArray<string>? groups,
        ImmutableArray<string>? storages
    )
    {
        var key = AnalyteKeys.ExpectedChanges;
        foreach (var change in analyte.ExpectedChanges)
        {
            References.Check(table, key, change.Group, "group", groups);
            References.Check(table, key, change.Storage ?? "", "storage", storages);
            if (draft.Root.IsSound(ProtocolKeys.TimePoints))
            {
                References.Check(
                    table,
                    key,
                    change.TimePoint.ToString(),
                    "time point",
                    [.. draft.TimePoints.Select(item => item.ToString())]
                );
            }
        }
    }

    private static void CheckTimePoints(
        TomlTable table,
        Key key,
        string what,
        ImmutableArray<TimePoint> timePoints,
        ProtocolDraft draft
    )
    {
        if (!draft.Root.IsSound(ProtocolKeys.TimePoints) || !table.IsSound(key))
        {
            return;
        }

        foreach (var point in timePoints)
        {
            References.Check(
                table,
                key,
                point.ToString(),
                "time point",
                [.. draft.TimePoints.Select(item => item.ToString())]
            );
        }

        if (timePoints.Zip(timePoints.Skip(1)).Any(pair => pair.First.Delay >= pair.Second.Delay))
        {
            table.Fault(
                key,
                ProtocolQueries.TimePointsOrder,
                string.Join(", ", timePoints),
                $"The time points of {what} are not different and ascending."
            );
        }
    }

    private static void CheckLevels(
        TomlTable table,
        Analyte analyte,
        ImmutableArray<string>? groups
    )
    {
        if (
            !table.IsSound(AnalyteKeys.LevelMeanings)
            || (table.Has(AnalyteKeys.DecisionLevels) && !table.IsSound(AnalyteKeys.DecisionLevels))
        )
        {
            return;
        }

        foreach (var meaning in analyte.LevelMeanings)
        {
            References.Check(
                table,
                AnalyteKeys.LevelMeanings,
                Written(meaning.Level),
                "decision level",
                [.. analyte.DecisionLevels.Select(Written)]
            );
            References.Check(
                table,
                AnalyteKeys.LevelMeanings,
                meaning.Group ?? "",
                "group",
                groups
            );
        }

        RequireOnce(
            table,
            AnalyteKeys.LevelMeanings,
            analyte.LevelMeanings.Select(item => $"{Written(item.Level)} {item.Group}".TrimEnd())
        );
    }

    /// <summary>A level as it is compared: 40 and 40.0 are one.</summary>
    private static string Written(decimal level) =>
        level.ToString("0.############################", CultureInfo.InvariantCulture);

    private static void CheckRatio(TomlTable table, Analyte analyte, ProtocolDraft draft)
    {
        var time = draft.Analytes.Values.FirstOrDefault(item => item.Id == analyte.RatioOf);
        if (time is not null && (time.Id == analyte.Id || !time.Categories.IsEmpty))
        {
            table.Fault(
                AnalyteKeys.RatioOf,
                ProtocolQueries.UnknownReference,
                time.Id,
                $"{analyte.Id} cannot be computed from {time.Id}.",
                "Name the analyte that holds the prothrombin time."
            );
        }
    }

    private static void RequireOnce(TomlTable table, Key key, IEnumerable<string> codes)
    {
        var twice = codes
            .Where(code => code.Length > 0)
            .GroupBy(code => code, StringComparer.Ordinal)
            .FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
        {
            table.Remark(
                key,
                ProtocolQueries.DuplicateId,
                twice.Key,
                $"\"{twice.Key}\" stands twice in \"{key.Name}\".",
                "List each once."
            );
        }
    }
}
