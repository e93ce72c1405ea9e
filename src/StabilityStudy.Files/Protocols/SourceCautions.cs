namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for sources that nobody can look up, each kind once for the whole protocol.</summary>
internal static class SourceCautions
{
    public static void Check(ProtocolDraft draft)
    {
        var sources = Sources(draft);
        Report(
            sources,
            source => source.IsTooShort,
            CautionQueries.SourceTooShort,
            "says too little to be looked up"
        );
        Report(
            sources,
            source => source.IsFromMemory,
            CautionQueries.SourceFromMemory,
            "is from memory"
        );
        Report(
            sources,
            source => source.IsExample,
            CautionQueries.SourceIsExample,
            "is an example"
        );
        CheckManufacturer(draft);
    }

    private static ImmutableArray<Place> Sources(ProtocolDraft draft) =>
        [
            new Place(
                draft.Root,
                ProtocolKeys.Eligibility,
                NamedSource.OfEligibility(draft.Eligibility)
            ),
            .. OfHandling(draft.Conduct),
            .. draft.Analytes.Items.SelectMany(part => OfAnalyte(part.Table, part.Value)),
            .. draft.Limits.Items.Select(part => new Place(
                part.Table,
                LimitKeys.Source,
                NamedSource.OfLimit(part.Value)
            )),
        ];

    private static IEnumerable<Place> OfHandling(ConductRules conduct)
    {
        if (conduct.Draw is var (drawTable, draw))
        {
            yield return new(drawTable, DrawKeys.Source, NamedSource.OfDraw(draw));
        }

        if (conduct.Spin is var (spinTable, spin))
        {
            yield return new(spinTable, SpinKeys.Source, NamedSource.OfSpin(spin));
        }

        if (conduct.Freezing is var (freezingTable, freezing))
        {
            yield return new(freezingTable, FreezingKeys.Source, NamedSource.OfFreezing(freezing));
        }
    }

    private static IEnumerable<Place> OfAnalyte(TomlTable table, Analyte analyte) =>
        [
            new(table, AnalyteKeys.StandardWindow, NamedSource.OfStandardWindow(analyte)),
            .. analyte.GroupWindows.Select(window => new Place(
                table,
                AnalyteKeys.GroupWindows,
                NamedSource.OfGroupWindow(analyte, window)
            )),
            new(table, AnalyteKeys.ManufacturerLimit, NamedSource.OfManufacturerLimit(analyte)),
        ];

    private static void Report(
        ImmutableArray<Place> sources,
        Func<NamedSource, bool> isMeant,
        QueryKind kind,
        string says,
        string? action = null
    )
    {
        var meant = sources.Where(place => isMeant(place.Source)).ToArray();
        if (meant is [var first, ..])
        {
            first.Table.Remark(
                first.Key,
                kind,
                first.Source.Text,
                $"A source {says}: {string.Join("; ", meant.Select(place => place.Source.Of))}.",
                action
            );
        }
    }

    private static void CheckManufacturer(ProtocolDraft draft)
    {
        var silent = draft
            .Analytes.Items.Where(part => !part.Table.Has(AnalyteKeys.ManufacturerLimit))
            .ToArray();
        if (silent is [var first, ..])
        {
            first.Table.Remark(
                AnalyteKeys.ManufacturerLimit,
                CautionQueries.ManufacturerLimitNotStated,
                "",
                $"The manufacturer's limit is not stated: {string.Join(", ", silent.Select(part => part.Value.Id))}."
            );
        }
    }

    private sealed record Place(TomlTable Table, Key Key, NamedSource Source);
}
