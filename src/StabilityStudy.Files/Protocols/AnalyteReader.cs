namespace StabilityStudy.Files.Protocols;

/// <summary>Reads an analyte of protocol.toml.</summary>
internal static class AnalyteReader
{
    public static Analyte Read(TomlTable table)
    {
        var isQualitative = table.Has(AnalyteKeys.Categories);
        if (isQualitative)
        {
            RefuseKeysOfNumbers(table);
        }

        return new(
            Id: table.Read(AnalyteKeys.Id),
            Name: table.Read(AnalyteKeys.Name),
            Method: table.Read(AnalyteKeys.Method),
            Loinc: table.Read(AnalyteKeys.Loinc),
            Unit: table.Read(AnalyteKeys.Unit, isRequired: !isQualitative),
            Decimals: isQualitative ? 0 : table.Read(AnalyteKeys.Decimals, isRequired: true),
            StandardWindow: ReadStandardWindow(table.RequireTable(AnalyteKeys.StandardWindow)),
            ManufacturerLimit: ReadManufacturerLimit(
                table.OptionalTable(AnalyteKeys.ManufacturerLimit)
            ),
            BetweenRunCvPercent: table
                .OptionalTable(AnalyteKeys.CvPercent)
                ?.Read(CvPercentKeys.BetweenRun),
            MeasuringInterval: table.Read(AnalyteKeys.MeasuringInterval),
            DecisionLevels: table.Read(AnalyteKeys.DecisionLevels),
            ErrorVarianceRatio: table.Read(AnalyteKeys.ErrorVarianceRatio),
            DriftShape: table.Read(AnalyteKeys.DriftShape)
        )
        {
            TimePoints = [.. table.Read(AnalyteKeys.TimePoints).Select(d => new TimePoint(d))],
            Groups = table.Read(AnalyteKeys.Groups),
            Storages = table.Read(AnalyteKeys.Storages),
            GroupWindows = [.. table.Tables(AnalyteKeys.GroupWindows).Select(ReadGroupWindow)],
            LevelMeanings = [.. table.Tables(AnalyteKeys.LevelMeanings).Select(ReadLevelMeaning)],
            PlannedRanges =
            [
                .. table
                    .Tables(AnalyteKeys.PlannedRanges)
                    .Select(range =>
                        (
                            Group: range.Read(PlannedRangeKeys.Group),
                            Ends: range.Read(PlannedRangeKeys.Range)
                        )
                    )
                    .Where(item => item.Ends is not null)
                    .Select(item => new PlannedRange(
                        item.Group,
                        item.Ends!.Lowest,
                        item.Ends.Highest
                    )),
            ],
            PlannedNumbers =
            [
                .. table.Tables(AnalyteKeys.PlannedNumbers).Select(PlannedNumberKeys.Read),
            ],
            Categories = table.Read(AnalyteKeys.Categories),
            RatioOf = table.Read(AnalyteKeys.RatioOf),
            OtherWindows = [.. table.Tables(AnalyteKeys.OtherWindows).Select(OtherWindowKeys.Read)],
            ExpectedChanges =
            [
                .. table.Tables(AnalyteKeys.ExpectedChanges).Select(ExpectedChangeKeys.Read),
            ],
        };
    }

    private static GroupWindow ReadGroupWindow(TomlTable table) =>
        new(
            Group: table.Read(GroupWindowKeys.Group),
            Rule: WithSecondStep(
                table,
                GroupWindowKeys.AsPlasma,
                new(table.Read(GroupWindowKeys.Time), table.Read(GroupWindowKeys.Source))
            )
        )
        {
            Storage = table.Read(GroupWindowKeys.Storage),
            TimePoints = [.. table.Read(GroupWindowKeys.TimePoints).Select(d => new TimePoint(d))],
        };

    private static LevelMeaning ReadLevelMeaning(TomlTable table)
    {
        if (!table.Has(LevelMeaningKeys.Below) && !table.Has(LevelMeaningKeys.Above))
        {
            table.Fault(
                LevelMeaningKeys.Below,
                FileQueries.MissingKey,
                "",
                "This entry of \"level_meanings\" has neither \"below\" nor \"above\".",
                $"Add one of them or both; write: {LevelMeaningKeys.Below.Line}."
            );
        }

        return new(
            table.Read(LevelMeaningKeys.Level),
            table.Read(LevelMeaningKeys.Group),
            table.Read(LevelMeaningKeys.Below),
            table.Read(LevelMeaningKeys.Above)
        );
    }

    private static WindowRule ReadStandardWindow(TomlTable table) =>
        WithSecondStep(
            table,
            StandardWindowKeys.AsPlasma,
            new(
                Time: table.Read(StandardWindowKeys.Time),
                Source: table.Read(StandardWindowKeys.Source)
            )
        );

    private static WindowRule WithSecondStep(
        TomlTable table,
        Key<TimeSpan?> key,
        WindowRule firstStep
    )
    {
        var rule = firstStep with { AsPlasma = table.Read(key) };
        if (rule.AsPlasma <= rule.Time && table.IsSound(key) && rule.Time > TimeSpan.Zero)
        {
            table.Fault(
                key,
                FileQueries.OutOfRange,
                DurationText.Format(rule.AsPlasma.Value),
                $"\"{key.Name}\" is the time up to which plasma may be tested, counted from collection, and is no longer than the {DurationText.Format(rule.Time)} of the first step.",
                $"Write the later time, or remove \"{key.Name}\"."
            );
        }

        return rule;
    }

    private static WindowRule? ReadManufacturerLimit(TomlTable? table) =>
        table is null
            ? null
            : new(
                Time: table.Read(ManufacturerLimitKeys.Time),
                Source: table.Read(ManufacturerLimitKeys.Document)
            );

    private static void RefuseKeysOfNumbers(TomlTable table)
    {
        foreach (var key in AnalyteKeys.OfNumbers.Where(table.Has))
        {
            table.Fault(
                key,
                FileQueries.UnknownKey,
                key.Name,
                $"\"{key.Name}\" has no meaning for a test with \"categories\".",
                "Remove it, or remove the categories."
            );
        }
    }
}
