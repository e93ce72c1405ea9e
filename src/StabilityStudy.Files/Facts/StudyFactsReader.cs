using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads study.toml.</summary>
public static class StudyFactsReader
{
    private const int LongestTitle = 120;
    private const int LongestQuestion = 400;

    private const int Format = 1;

    /// <summary>Reads the study facts. What they refer to in the protocol and the data is checked when the whole study is read.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <returns>The facts, or every stop query.</returns>
    public static Outcome<StudyFacts> Read(ReadOnlyMemory<byte> utf8, string fileName)
    {
        var queries = new QueryList();
        var draft = Read(utf8, fileName, queries);
        return queries.Conclude(draft?.ToFacts());
    }

    /// <summary>Reads what can be read; null when the file is not TOML.</summary>
    internal static FactsDraft? Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        QueryList queries,
        bool needsZoneRules = true
    )
    {
        if (TomlDocument.Read(utf8, fileName, queries) is not { } entries)
        {
            return null;
        }

        var root = TomlTable.Root(entries, FactsKeys.Root, fileName, queries);
        FormatNumber.Check(root, Format);
        var draft = new FactsDraft(
            root,
            Title: root.RequireText("title", LongestTitle),
            Facility: root.RequireText("facility", LongestTitle),
            Question: root.RequireText("question", LongestQuestion),
            Invented: root.OptionalFlag("invented"),
            TimeZone: ZoneReader.Read(root, "time_zone", needsZoneRules),
            People: Parts<Person>.Read(root, "person", FactsKeys.Person, ReadPerson),
            Instruments: Parts<Instrument>.Read(
                root,
                "instrument",
                FactsKeys.Instrument,
                ReadInstrument,
                required: false
            ),
            Lots: Parts<Lot>.Read(root, "lot", FactsKeys.Lot, ReadLot, required: false),
            Clocks: ReadClocks(root.OptionalTable("clock", FactsKeys.Clock)),
            FileNames: DataFileNames.Read(root.OptionalTable("files", FactsKeys.Files)),
            Exclusions: Parts<Exclusion>.Read(
                root,
                "exclusion",
                FactsKeys.Exclusion,
                ReadExclusion,
                required: false
            ),
            Deviations: Parts<Deviation>.Read(
                root,
                "deviation",
                FactsKeys.Deviation,
                ReadDeviation,
                required: false
            ),
            Reruns: Parts<Rerun>.Read(root, "rerun", FactsKeys.Rerun, ReadRerun, required: false)
        );
        Check(draft);
        return draft;
    }

    private static Person ReadPerson(TomlTable table) =>
        new(
            Code: table.RequireText("code"),
            Name: table.RequireText("name"),
            Role: table.RequireText("role")
        );

    private static Instrument ReadInstrument(TomlTable table) =>
        new(Id: table.RequireText("id"), Name: table.RequireText("name"));

    private static Lot ReadLot(TomlTable table) =>
        new(
            Id: table.RequireText("id"),
            Kind: table.RequireText("kind"),
            Analyte: table.RequireText("analyte"),
            Expires: table.OptionalDate("expires")
        )
        {
            Isi = table.OptionalDecimal("isi", NumberRange.Isi),
            MeanNormalTime = table.OptionalDecimal("mean_normal_time", NumberRange.AboveZero),
        };

    private static ImmutableArray<Clock> ReadClocks(TomlTable? table) =>
        table is null
            ? []
            :
            [
                .. FactsKeys
                    .Clock.Keys.Where(table.Has)
                    .Select(column => new Clock(column, table.RequireText(column))),
            ];

    private static Exclusion ReadExclusion(TomlTable table) =>
        new(
            Specimen: table.RequireText("specimen"),
            Analyte: table.OptionalText("analyte"),
            TimePoint: table.OptionalDuration("time_point") is { } delay
                ? new TimePoint(delay)
                : null,
            Reason: table.RequireText("reason"),
            By: table.RequireText("by"),
            On: table.RequireDate("on"),
            Line: table.Line ?? 1
        )
        {
            Time = table.OptionalClock("time"),
        };

    private static Rerun ReadRerun(TomlTable table) =>
        new(
            Specimen: table.RequireText("specimen"),
            Analyte: table.RequireText("analyte"),
            TimePoint: table.OptionalDuration("time_point") is { } delay
                ? new TimePoint(delay)
                : null,
            Reason: table.RequireText("reason"),
            By: table.RequireText("by"),
            On: table.RequireDate("on"),
            Line: table.Line ?? 1
        );

    private static Deviation ReadDeviation(TomlTable table) =>
        new(
            Text: table.RequireText("text"),
            By: table.RequireText("by"),
            On: table.RequireDate("on")
        );

    private static void Check(FactsDraft draft)
    {
        draft.People.RequireUnique("code", person => person.Code);
        draft.Instruments.RequireUnique("id", instrument => instrument.Id);
        draft.Lots.RequireUnique("id", lot => lot.Id);
        var people = draft.People.Codes("code", person => person.Code);
        foreach (var (table, exclusion) in draft.Exclusions.Items)
        {
            References.Check(table, "by", exclusion.By, "person", people);
        }

        foreach (var (table, deviation) in draft.Deviations.Items)
        {
            References.Check(table, "by", deviation.By, "person", people);
        }

        foreach (var (table, rerun) in draft.Reruns.Items)
        {
            References.Check(table, "by", rerun.By, "person", people);
        }
    }
}
