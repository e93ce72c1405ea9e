using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Looks for sources that nobody can look up, each kind once for the whole protocol.</summary>
internal static class SourceCautions
{
    private const int ShortestSource = 8;

    public static void Check(ProtocolDraft draft)
    {
        var sources = Sources(draft);
        Report(
            sources,
            text => text.Length is > 0 and < ShortestSource,
            CautionQueries.SourceTooShort,
            "says too little to be looked up",
            "Name the document, edition and place."
        );
        Report(
            sources,
            text => text.Contains("from memory", StringComparison.OrdinalIgnoreCase),
            CautionQueries.SourceFromMemory,
            "is from memory",
            "Look it up and name the document, edition and place."
        );
        Report(
            sources,
            text => text.StartsWith("example", StringComparison.OrdinalIgnoreCase),
            CautionQueries.SourceIsExample,
            "is an example",
            "Name your own document."
        );
        CheckManufacturer(draft);
    }

    private static ImmutableArray<Source> Sources(ProtocolDraft draft) =>
        [
            new Source(draft.Root, "eligibility", "eligibility", draft.Eligibility.Source),
            .. draft.Analytes.Items.SelectMany(part => OfAnalyte(part.Table, part.Value)),
            .. draft.Limits.Items.Select(part => new Source(
                part.Table,
                "source",
                $"limit {part.Value.Id}",
                part.Value.Source
            )),
        ];

    private static IEnumerable<Source> OfAnalyte(TomlTable table, Analyte analyte) =>
        [
            new(
                table,
                "standard_window",
                $"standard window of {analyte.Id}",
                analyte.StandardWindow.Source
            ),
            .. analyte.GroupWindows.Select(window => new Source(
                table,
                "group_windows",
                $"window of {analyte.Id} in {window.Group}",
                window.Rule.Source
            )),
            new(
                table,
                "manufacturer_limit",
                $"manufacturer's limit of {analyte.Id}",
                analyte.ManufacturerLimit?.Source ?? ""
            ),
        ];

    private static void Report(
        ImmutableArray<Source> sources,
        Func<string, bool> isMeant,
        QueryKind kind,
        string says,
        string action
    )
    {
        var meant = sources.Where(source => isMeant(source.Text)).ToArray();
        if (meant is [var first, ..])
        {
            first.Table.Remark(
                first.Key,
                kind,
                first.Text,
                $"A source {says}: {string.Join("; ", meant.Select(source => source.Of))}.",
                action
            );
        }
    }

    private static void CheckManufacturer(ProtocolDraft draft)
    {
        var silent = draft
            .Analytes.Items.Where(part => !part.Table.Has("manufacturer_limit"))
            .ToArray();
        if (silent is [var first, ..])
        {
            first.Table.Remark(
                "manufacturer_limit",
                CautionQueries.ManufacturerLimitNotStated,
                "",
                $"The manufacturer's limit is not stated: {string.Join(", ", silent.Select(part => part.Value.Id))}.",
                "Look it up in the instructions for use and add manufacturer_limit."
            );
        }
    }

    private sealed record Source(TomlTable Table, string Key, string Of, string Text);
}
