using StabilityStudy.Core.Study;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Intake;

/// <summary>Reads a study folder in one pass, so that every query of every file is found at once.</summary>
internal static class StudyReading
{
    /// <summary>Reads the files.</summary>
    /// <param name="files">The files.</param>
    /// <param name="isCanonical">Whether the data files are canonical: then they have their usual names and a column source_row.</param>
    /// <param name="queries">Takes every query.</param>
    /// <param name="written">The rows from which canonical files were written, where that is known.</param>
    /// <returns>The inputs; null when a query stops.</returns>
    public static StudyInputs? Read(
        StudyBytes files,
        bool isCanonical,
        QueryList queries,
        WrittenRows? written = null
    ) =>
        ReadSound(files, isCanonical, queries, written) is var read && queries.StopCount == 0
            ? read
            : null;

    /// <summary>The same with the rows that can be read where a query stops; null when protocol or study.toml cannot.</summary>
    public static StudyInputs? ReadSound(
        StudyBytes files,
        bool isCanonical,
        QueryList queries,
        WrittenRows? written = null
    )
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
        var isPlanned = queries.StopCount == 0;
        var names = facts?.FileNames ?? StudyFileNames.Usual;
        var data = DataFileSet.Find(
            files,
            names,
            facts?.Root.OptionalTable(FactsKeys.Read),
            isCanonical
        );
        queries.Names = NamesOf(names, data);
        var known = StudyCodes.From(protocol, facts, new FlagSet(data.Flags, !isCanonical));
        var (tubes, results) = data.Pairs is { } pairs
            ? ReadPairs(files, pairs, known, protocol, queries)
            : (
                ReadTubes(files, data, known, queries, written),
                ReadRows<ResultRow>(
                    files,
                    data.Results,
                    known,
                    (bytes, name, columns, codes, list, before) =>
                        ResultReader.Read(bytes, name, columns, codes, list, before, written),
                    queries
                )
            );
        (results, var clocks) = CorrectedClocks.Apply(results, facts);
        var controls = ReadControls(
            files,
            data.Controls,
            protocol,
            isNeeded: !queries.IsCollecting || (!isCanonical && !results.Rows.IsEmpty),
            known,
            queries
        );
        var used = RowChecks.Check(tubes, results, protocol, facts, queries);
        var usedControls = ControlChecks.Check(clocks.Of(controls), used, queries);
        if (!isCanonical)
        {
            ReportUnread(files, data, queries);
        }

        var locks = files.Files.TryGetValue(LockFile.Name, out var lockBytes)
            ? LockFile.Read(lockBytes, queries)
            : [];
        var looks = files.Files.TryGetValue(StudyFileNames.Looks, out var looksBytes)
            ? LookReader.Read(looksBytes, known, queries)
            : [];
        return isPlanned && protocol is not null && facts is not null
            ? new StudyInputs(
                protocol.ToProtocol(),
                NamedFacts(facts, data, used),
                tubes.Rows,
                used
            )
            {
                Controls = usedControls,
                Locks =
                    queries.StopCount == 0 ? LockedProtocols.Of(locks, files.Files, queries) : [],
                Looks = looks,
            }
            : null;
    }

    /// <summary>The names under which the data files stand in the folder, as far as they are there.</summary>
    public static ImmutableArray<string> DataNamesIn(StudyBytes files)
    {
        var data = DataFilesOf(files);
        ImmutableArray<string> names =
        [
            .. (data.Pairs ?? data.Specimens).AllStored,
            .. (data.Pairs ?? data.Results).AllStored,
            .. data.Controls.AllStored,
        ];
        return [.. names.Distinct().Where(files.Files.ContainsKey)];
    }

    /// <summary>The time zone that study.toml names; null where it names none, or cannot be read.</summary>
    public static string? TimeZoneOf(StudyBytes files) =>
        files.Files.TryGetValue(StudyBytes.FactsName, out var bytes)
            ? StudyFactsReader.Read(bytes, StudyBytes.FactsName, new QueryList())?.TimeZone?.Name
            : null;

    /// <summary>The files of data that study.toml names.</summary>
    public static DataFileSet DataFilesOf(StudyBytes files)
    {
        var facts = files.Files.TryGetValue(StudyBytes.FactsName, out var bytes)
            ? StudyFactsReader.Read(bytes, StudyBytes.FactsName, new QueryList())
            : null;
        return DataFileSet.Find(
            files,
            facts?.FileNames ?? StudyFileNames.Usual,
            facts?.Root.OptionalTable(FactsKeys.Read),
            isCanonical: false
        );
    }

    private static void ReportUnread(StudyBytes files, DataFileSet data, QueryList queries)
    {
        string?[] read =
        [
            .. data.Pairs is { } pairs
                ? pairs.AllStored
                : [.. data.Specimens.AllStored, .. data.Results.AllStored],
            .. data.Controls.AllStored,
            StudyFileNames.Looks,
        ];
        foreach (
            var name in files.Tables.Where(name => !read.Contains(name) && !IsUnfilled(files, name))
        )
        {
            queries.AddOwn(FileQueries.FileNotRead, new QuerySource(name, null, null), "");
        }
    }

    // Queries about rows of pairs name the file of pairs.
    private static StudyFacts NamedFacts(
        FactsDraft facts,
        DataFileSet data,
        ImmutableArray<ResultRow> results
    )
    {
        var read = facts.ToFacts();
        var (name, ofResults, ofTubes) = data.Stated;
        return read with
        {
            OwnFiles = data.Own,
            SentTimes = SentTimes.Of(name, ofResults, ofTubes, results),
            Files = NamesOf(read.Files, data),
        };
    }

    private static RowTable<TubeRow> ReadTubes(
        StudyBytes files,
        DataFileSet data,
        KnownCodes known,
        QueryList queries,
        WrittenRows? written
    )
    {
        var file = data.Specimens;
        if (file.Columns.Layout is not { TimesFromMessages: true })
        {
            return ReadRows<TubeRow>(
                files,
                file,
                known,
                (bytes, name, columns, codes, list, before) =>
                    SpecimenReader.Read(
                        bytes,
                        name,
                        columns,
                        codes,
                        list,
                        before,
                        written: written
                    ),
                queries
            );
        }

        var sent = new SentTubeTimes();
        var messages = PartsOf(data.Results)
            .Where(part => MessageFile.IsName(part.File.Stored))
            .ToImmutableArray();
        foreach (var (part, i) in messages)
        {
            if (
                files.Files.TryGetValue(part.Stored, out var bytes)
                && part.Columns.Layout is { } layout
            )
            {
                sent.Add(bytes, part.Shown, layout, known, queries, i * StudyFileNames.LinesOfFile);
            }
        }

        if (messages.IsEmpty)
        {
            queries.Add(
                MessageQueries.SettingWithoutUse,
                new QuerySource(file.Shown, null, null),
                "times_from_messages",
                "times_from_messages under [read.specimens] of study.toml takes times from messages, and the results are none."
            );
        }

        return ReadRows<TubeRow>(
            files,
            file with
            {
                Columns = SentTubeTimes.Without(file.Columns),
            },
            known,
            (bytes, name, columns, codes, list, before) =>
                SpecimenReader.Read(bytes, name, columns, codes, list, before, sent),
            queries
        );
    }

    private static StudyFileNames NamesOf(StudyFileNames names, DataFileSet data) =>
        names with
        {
            Specimens = data.Specimens.Shown,
            Results = data.Results.Shown,
            Controls = data.Controls.Shown,
            MoreSpecimens = data.More.Specimens,
            MoreResults = data.More.Results,
            MoreControls = data.More.Controls,
        };

    private static (RowTable<TubeRow>, RowTable<ResultRow>) ReadPairs(
        StudyBytes files,
        DataFile file,
        KnownCodes known,
        ProtocolDraft? protocol,
        QueryList queries
    )
    {
        var (tubes, results) = (
            RowTable<TubeRow>.Absent(file.Shown),
            RowTable<ResultRow>.Absent(file.Shown)
        );
        foreach (var (part, i) in PartsOf(file))
        {
            if (Find(files, part.Stored, queries) is { } bytes)
            {
                var (moreTubes, moreResults) = PairReader.Read(
                    bytes,
                    part.Shown,
                    part.Columns,
                    known,
                    protocol,
                    queries,
                    i * StudyFileNames.LinesOfFile
                );
                (tubes, results) =
                    i == 0
                        ? (moreTubes, moreResults)
                        : (tubes.With(moreTubes), results.With(moreResults));
            }
        }

        return (tubes, results);
    }

    /// <summary>The files of a kind, each by itself.</summary>
    private static IEnumerable<(DataFile File, int Number)> PartsOf(DataFile file) =>
        file
            .More.Select(name =>
                file with
                {
                    Stored = name,
                    Shown = name,
                    More = [],
                    Columns = DataFile.ColumnsIn(name, file.Columns),
                }
            )
            .Prepend(file)
            .Select((part, i) => (part, i));

    private delegate RowTable<T> RowReader<T>(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        int linesBefore
    );

    private static RowTable<T> ReadRows<T>(
        StudyBytes files,
        DataFile file,
        KnownCodes known,
        RowReader<T> read,
        QueryList queries
    )
    {
        var rows = RowTable<T>.Absent(file.Shown);
        foreach (var (part, i) in PartsOf(file))
        {
            if (Find(files, part.Stored, queries) is { } bytes)
            {
                var more = read(
                    bytes,
                    part.Shown,
                    part.Columns,
                    known,
                    queries,
                    i * StudyFileNames.LinesOfFile
                );
                rows = i == 0 ? more : rows.With(more);
            }
        }

        return rows;
    }

    private static RowTable<ControlRow> ReadControls(
        StudyBytes files,
        DataFile file,
        ProtocolDraft? protocol,
        bool isNeeded,
        KnownCodes known,
        QueryList queries
    )
    {
        // A study folder begins with empty tables; where controls are kept elsewhere theirs stays so.
        var rule = protocol?.ToProtocol().Controls;
        var isEmpty = rule == ControlRule.KeptElsewhere && IsUnfilled(files, file.Stored);
        if (files.Files.ContainsKey(file.Stored) && !isEmpty)
        {
            return ReadRows<ControlRow>(files, file, known, ControlReader.Read, queries);
        }

        if (!isNeeded || isEmpty)
        {
            return RowTable<ControlRow>.Absent(file.Shown);
        }

        if (rule == ControlRule.EveryRun)
        {
            queries.Add(
                RowQueries.ControlsFileMissing,
                new QuerySource(file.Shown, null, null),
                "",
                $"The protocol wants controls in every run, and the study folder has no file \"{file.Shown}\".",
                $"Add {file.Shown} with the control results of each run; where controls are documented in another place, plan that with controls = \"kept elsewhere\" in the protocol."
            );
        }
        else if (file.Shown != StudyFileNames.Usual.Controls)
        {
            Find(files, file.Shown, queries);
        }

        return RowTable<ControlRow>.Absent(file.Shown);
    }

    /// <summary>Whether a table of text holds one line at most, its header.</summary>
    private static bool IsUnfilled(StudyBytes files, string name) =>
        name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)
        && files.Files.TryGetValue(name, out var bytes)
        && bytes.Span.TrimEnd("\r\n "u8).IndexOf((byte)'\n') < 0;

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
                    "Begin a new study with start, or copy a ready protocol, which protocols prints, to protocol.toml.",
                StudyBytes.FactsName =>
                    "Begin a new study with start, which writes a study.toml to be filled in.",
                _ =>
                    "Put the file into the study folder, or give its name under [files] in study.toml.",
            }
        );
        return null;
    }
}
