using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Intake;

/// <summary>Reads a study folder in one pass, so that every query of every file is found at once.</summary>
internal static class StudyReading
{
    /// <summary>Reads the files.</summary>
    /// <param name="files">The files.</param>
    /// <param name="isCanonical">Whether the data files are canonical: then they have their usual names and a column source_row.</param>
    /// <param name="queries">Takes every query.</param>
    /// <returns>The inputs; null when a query stops.</returns>
    public static StudyInputs? Read(StudyBytes files, bool isCanonical, QueryList queries)
    {
        var protocol = Find(files, StudyBytes.ProtocolName, queries) is { } protocolBytes
            ? ProtocolReader.Read(protocolBytes, StudyBytes.ProtocolName, queries)
            : null;
        var facts = Find(files, StudyBytes.FactsName, queries) is { } factsBytes
            ? StudyFactsReader.Read(
                factsBytes,
                StudyBytes.FactsName,
                queries,
                needsZoneRules: !isCanonical
            )
            : null;
        var names = facts?.FileNames ?? StudyFileNames.Usual;
        var known = KnownCodes.From(protocol, facts);
        var tubes = ReadTubes(files, names, known, isCanonical, queries);
        var results = ReadResults(files, names, known, isCanonical, queries);
        var used = RowChecks.Check(tubes, results, protocol, facts, queries);
        return queries.StopCount == 0 && protocol is not null && facts is not null
            ? new StudyInputs(protocol.ToProtocol(), facts.ToFacts(), tubes.Rows, used)
            : null;
    }

    /// <summary>The names of the data files that a study folder has.</summary>
    public static StudyFileNames NamesIn(StudyBytes files)
    {
        var facts = files.Files.TryGetValue(StudyBytes.FactsName, out var bytes)
            ? StudyFactsReader.Read(bytes, StudyBytes.FactsName, new QueryList())
            : null;
        return facts?.FileNames ?? StudyFileNames.Usual;
    }

    private static RowTable<TubeRow> ReadTubes(
        StudyBytes files,
        StudyFileNames names,
        KnownCodes known,
        bool isCanonical,
        QueryList queries
    )
    {
        var stored = isCanonical ? StudyFileNames.Usual.Specimens : names.Specimens;
        var columns = CsvColumns.Specimens;
        return Find(files, stored, queries) is { } bytes
            ? SpecimenReader.Read(
                bytes,
                names.Specimens,
                isCanonical ? columns.WithSourceRow() : columns,
                known,
                queries
            )
            : RowTable<TubeRow>.Absent(names.Specimens);
    }

    private static RowTable<ResultRow> ReadResults(
        StudyBytes files,
        StudyFileNames names,
        KnownCodes known,
        bool isCanonical,
        QueryList queries
    )
    {
        var stored = isCanonical ? StudyFileNames.Usual.Results : names.Results;
        var columns = CsvColumns.Results;
        return Find(files, stored, queries) is { } bytes
            ? ResultReader.Read(
                bytes,
                names.Results,
                isCanonical ? columns.WithSourceRow() : columns,
                known,
                queries
            )
            : RowTable<ResultRow>.Absent(names.Results);
    }

    private static ReadOnlyMemory<byte>? Find(StudyBytes files, string name, QueryList queries)
    {
        if (files.Files.TryGetValue(name, out var bytes))
        {
            return bytes;
        }

        queries.Add(
            FileQueries.MissingFile,
            new QuerySource(name, null, null),
            "",
            $"The study folder has no file \"{name}\".{NearestWord.Question(name, files.Files.Keys)}",
            name switch
            {
                StudyBytes.ProtocolName =>
                    "Begin with a ready protocol: copy one from the folder protocols to protocol.toml and change it.",
                StudyBytes.FactsName =>
                    "Describe the study in study.toml: copy the one of an example study and change it.",
                _ =>
                    "Put the file into the study folder, or give its name under [files] in study.toml.",
            }
        );
        return null;
    }
}
