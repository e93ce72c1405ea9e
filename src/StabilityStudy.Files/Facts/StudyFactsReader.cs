using StabilityStudy.Core.Study;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads study.toml.</summary>
internal static class StudyFactsReader
{
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

        var root = TomlTable.Root(entries, FactsKeys.Table, fileName, queries);
        FormatNumber.Check(root, FactsKeys.Format, Format);
        var draft = new FactsDraft(
            root,
            Title: root.Read(FactsKeys.Title),
            Facility: root.Read(FactsKeys.Facility),
            Question: root.Read(FactsKeys.Question),
            Invented: root.Read(FactsKeys.Invented),
            TimeZone: ZoneReader.Read(root, FactsKeys.TimeZone, needsZoneRules),
            People: Parts<Person>.Read(root, FactsKeys.People, ReadPerson),
            Instruments: Parts<Instrument>.Read(root, FactsKeys.Instruments, ReadInstrument),
            Lots: Parts<Lot>.Read(root, FactsKeys.Lots, ReadLot),
            Clocks: ReadClocks(root.OptionalTable(FactsKeys.Clocks)),
            ClockCorrections: Parts<ClockCorrection>.Read(
                root,
                FactsKeys.ClockCorrections,
                ClockCorrectionKeys.Read
            ),
            FileNames: DataFileNames.Read(
                root.OptionalTable(FactsKeys.Files),
                key => root.HasWithin(FactsKeys.Read, key.Name)
            ),
            Exclusions: Parts<Exclusion>.Read(root, FactsKeys.Exclusions, ReadExclusion),
            Deviations: Parts<Deviation>.Read(root, FactsKeys.Deviations, ReadDeviation),
            Reruns: Parts<Rerun>.Read(root, FactsKeys.Reruns, ReadRerun),
            NotDrawn: Parts<NotDrawn>.Read(root, FactsKeys.NotDrawn, ReadNotDrawn),
            TranscriptionChecks: Parts<TranscriptionCheck>.Read(
                root,
                FactsKeys.TranscriptionChecks,
                TranscriptionCheckReader.Read
            ),
            Answers: Parts<QueryAnswer>.Read(root, FactsKeys.Answers, ReadAnswer),
            Handling: HandlingFacts.Read(root),
            EndedEarly: ReadEndedEarly(root.OptionalTable(FactsKeys.EndedEarly)),
            CodesDeclared: ReadCodesDeclared(root.OptionalTable(FactsKeys.CodesDeclared)),
            Revision: ReadRevision(root.OptionalTable(FactsKeys.Revision))
        );
        Check(draft);
        return draft;
    }

    private static Person ReadPerson(TomlTable table) =>
        new(
            Code: table.Read(PersonKeys.Code),
            Name: table.Read(PersonKeys.Name),
            Role: table.Read(PersonKeys.Role)
        );

    private static Instrument ReadInstrument(TomlTable table) =>
        new(Id: table.Read(InstrumentKeys.Id), Name: table.Read(InstrumentKeys.Name))
        {
            Site = table.Read(InstrumentKeys.Site),
        };

    private static Lot ReadLot(TomlTable table) =>
        new(
            Id: table.Read(LotKeys.Id),
            Kind: table.Read(LotKeys.Kind),
            Analyte: table.Read(LotKeys.Analyte),
            Expires: table.Read(LotKeys.Expires)
        )
        {
            Isi = table.Read(LotKeys.Isi),
            MeanNormalTime = table.Read(LotKeys.MeanNormalTime),
        };

    private static ImmutableArray<Clock> ReadClocks(TomlTable? table) =>
        table is null
            ? []
            :
            [
                .. ClockKeys
                    .Columns.Where(table.Has)
                    .Select(column => new Clock(column.Name, table.Read(column))),
            ];

    private static Exclusion ReadExclusion(TomlTable table) =>
        new(
            Specimen: table.Read(ExclusionKeys.Specimen),
            Analyte: table.Read(ExclusionKeys.Analyte),
            TimePoint: TimePointOf(table.Read(ExclusionKeys.TimePoint)),
            Reason: table.Read(ExclusionKeys.Reason),
            By: table.Read(ExclusionKeys.By),
            On: table.Read(ExclusionKeys.On),
            Line: table.Line ?? 1
        )
        {
            Time = table.Read(ExclusionKeys.Time),
        };

    private static Rerun ReadRerun(TomlTable table) =>
        new(
            Specimen: table.Read(RerunKeys.Specimen),
            Analyte: table.Read(RerunKeys.Analyte),
            TimePoint: TimePointOf(table.Read(RerunKeys.TimePoint)),
            Reason: table.Read(RerunKeys.Reason),
            By: table.Read(RerunKeys.By),
            On: table.Read(RerunKeys.On),
            Line: table.Line ?? 1
        );

    private static NotDrawn ReadNotDrawn(TomlTable table) =>
        new(
            Specimen: table.Read(NotDrawnKeys.Specimen),
            TimePoint: new TimePoint(table.Read(NotDrawnKeys.TimePoint)),
            Storage: table.Read(NotDrawnKeys.Storage),
            Reason: table.Read(NotDrawnKeys.Reason),
            By: table.Read(NotDrawnKeys.By),
            On: table.Read(NotDrawnKeys.On),
            Line: table.Line ?? 1
        );

    private static EndedEarly? ReadEndedEarly(TomlTable? table) =>
        table is null
            ? null
            : new(
                Reason: table.Read(EndedEarlyKeys.Reason),
                By: table.Read(EndedEarlyKeys.By),
                On: table.Read(EndedEarlyKeys.On),
                Line: table.Line ?? 1
            );

    private static DeclaredCodes? ReadCodesDeclared(TomlTable? table) =>
        table is null
            ? null
            : new(
                Reason: table.Read(DeclaredCodesKeys.Reason),
                By: table.Read(DeclaredCodesKeys.By),
                On: table.Read(DeclaredCodesKeys.On),
                Line: table.Line ?? 1
            );

    private static ReportRevision? ReadRevision(TomlTable? table) =>
        table is null
            ? null
            : new(
                Number: table.Read(RevisionKeys.Number),
                Replaces: table.Read(RevisionKeys.Replaces),
                Reason: table.Read(RevisionKeys.Reason)
            );

    private static QueryAnswer ReadAnswer(TomlTable table) =>
        new(
            Query: table.Read(AnswerKeys.Query),
            Text: table.Read(AnswerKeys.Answer),
            By: table.Read(AnswerKeys.By),
            On: table.Read(AnswerKeys.On)
        );

    private static Deviation ReadDeviation(TomlTable table) =>
        new(
            Text: table.Read(DeviationKeys.What),
            By: table.Read(DeviationKeys.By),
            On: table.Read(DeviationKeys.On)
        );

    private static TimePoint? TimePointOf(TimeSpan? delay) =>
        delay is { } known ? new TimePoint(known) : null;

    private static void Check(FactsDraft draft)
    {
        draft.People.RequireUnique(PersonKeys.Code, person => person.Code);
        draft.Instruments.RequireUnique(InstrumentKeys.Id, instrument => instrument.Id);
        draft.Lots.RequireUnique(LotKeys.Id, lot => lot.Id);
        var people = draft.People.Codes(PersonKeys.Code, person => person.Code);
        foreach (var (table, exclusion) in draft.Exclusions.Items)
        {
            References.Check(table, ExclusionKeys.By, exclusion.By, "person", people);
        }

        foreach (var (table, deviation) in draft.Deviations.Items)
        {
            References.Check(table, DeviationKeys.By, deviation.By, "person", people);
        }

        foreach (var (table, correction) in draft.ClockCorrections.Items)
        {
            References.Check(table, ClockCorrectionKeys.By, correction.By, "person", people);
        }

        foreach (var (table, rerun) in draft.Reruns.Items)
        {
            References.Check(table, RerunKeys.By, rerun.By, "person", people);
        }

        if (draft.Root.OptionalTable(FactsKeys.EndedEarly) is { } endedEarly)
        {
            References.Check(
                endedEarly,
                EndedEarlyKeys.By,
                draft.EndedEarly?.By ?? "",
                "person",
                people
            );
        }

        if (draft.Root.OptionalTable(FactsKeys.CodesDeclared) is { } declared)
        {
            References.Check(
                declared,
                DeclaredCodesKeys.By,
                draft.CodesDeclared?.By ?? "",
                "person",
                people
            );
        }

        foreach (var (table, check) in draft.TranscriptionChecks.Items)
        {
            References.Check(table, TranscriptionCheckKeys.By, check.By, "person", people);
            TranscriptionCheckReader.CheckDifferences(table, check);
        }

        draft.Answers.RequireUnique(AnswerKeys.Query, answer => answer.Query);
        foreach (var (table, answer) in draft.Answers.Items)
        {
            References.Check(table, AnswerKeys.By, answer.By, "person", people);
        }

        foreach (var (table, notDrawn) in draft.NotDrawn.Items)
        {
            References.Check(table, NotDrawnKeys.By, notDrawn.By, "person", people);
        }
    }
}
