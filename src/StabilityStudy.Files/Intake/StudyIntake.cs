using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Files.Intake;

/// <summary>Reads a study: from the facility's files to canonical files to what is analyzed.</summary>
public static class StudyIntake
{
    /// <summary>Reads a study folder. The facility's rows are written in canonical form, and the rows that are analyzed are read from that.</summary>
    /// <param name="files">protocol.toml, study.toml and the data files named there.</param>
    /// <returns>The study with every query, or every stop query of every file.</returns>
    public static Outcome<StudyIntakeResult> Read(StudyBytes files) =>
        Read(files, isCollecting: false, out _);

    /// <summary>Reads a study folder while specimens are being collected: a table without rows, or no file of controls before there are results, is nothing to ask about.</summary>
    /// <param name="files">protocol.toml, study.toml and the data files named there.</param>
    public static Outcome<StudyIntakeResult> ReadCollecting(StudyBytes files) =>
        Read(files, isCollecting: true, out _);

    /// <summary>The same with the rows that can be read where a query stops. Nobody who calls it needs to hold the files meanwhile.</summary>
    /// <param name="files">protocol.toml, study.toml and the data files named there.</param>
    /// <param name="sound">Where a query stops, the rows that can be read; null otherwise, and when protocol or study.toml cannot be read.</param>
    public static Outcome<StudyIntakeResult> ReadCollecting(
        StudyBytes files,
        out StudyInputs? sound
    ) => Read(files, isCollecting: true, out sound);

    /// <summary>The rows that can be read of a study in which a query stops; null when its protocol or study.toml cannot be read.</summary>
    /// <param name="files">protocol.toml, study.toml and the data files named there.</param>
    public static StudyInputs? ReadSound(StudyBytes files) =>
        StudyReading.ReadSound(files, isCanonical: false, new QueryList { IsCollecting = true });

    /// <summary>The names of the files of data that study.toml names, as far as they are in the folder.</summary>
    /// <param name="files">The files of the study folder.</param>
    public static ImmutableArray<string> DataNamesIn(StudyBytes files) =>
        StudyReading.DataNamesIn(files);

    /// <summary>The time zone that study.toml names; null where it names none, or cannot be read.</summary>
    /// <param name="files">The files of the study folder.</param>
    public static string? TimeZoneOf(StudyBytes files) => StudyReading.TimeZoneOf(files);

    private static Outcome<StudyIntakeResult> Read(
        StudyBytes files,
        bool isCollecting,
        out StudyInputs? sound
    )
    {
        sound = null;
        var queries = new QueryList { IsCollecting = isCollecting };
        if (WriteCanonical(files, queries) is not var ((canonical, data, written), raw))
        {
            sound = isCollecting ? ReadSound(files) : null;
            return Outcome.Stopped<StudyIntakeResult>(queries.ToImmutable());
        }

        var list = new QueryList { IsCollecting = isCollecting };
        var record = files.Files.GetValueOrDefault(StudyRecord.Name);
        var all = WithCanonical(files, canonical);
        if (isCollecting && canonical.Files.All(file => file.Name != StudyFileNames.Usual.Controls))
        {
            // A file of controls without rows has no canonical form.
            all = new StudyBytes(all.Files.Remove(StudyFileNames.Usual.Controls));
        }

        // From here on the files as they came are no longer needed.
        LargeData.Release(canonical.Files.Sum(file => (long)file.Bytes.Length));
        var inputs = StudyReading.Read(all, isCanonical: true, list, written);
        if (inputs is null && isCollecting)
        {
            sound = StudyReading.ReadSound(all, isCanonical: true, new QueryList());
        }

        var identity = Identify(all, canonical, inputs, raw, data);
        var chain = StudyRecord.Check(
            record,
            identity.HashOf(LockFile.Name),
            inputs?.Locks.Length ?? 0
        );
        var reports = chain.Any(query => query.Kind == LockFileQueries.RecordChainBroken)
            ? []
            : SignedReports
                .Check(record, identity.Inputs)
                .AddRange(RevisedReports.Check(record, inputs?.Facts.Revision));
        return Conclude(
            inputs,
            canonical,
            identity,
            list,
            [.. queries.ToImmutable(), .. chain, .. reports]
        );
    }

    /// <summary>Reads a study of which only the canonical data files are at hand, as a report carries them.</summary>
    /// <param name="files">protocol.toml, study.toml, and specimens.csv and results.csv in canonical form.</param>
    /// <param name="isOfOtherVersion">Whether another version wrote the files, whose canonical form may be another.</param>
    /// <returns>The same study that <see cref="Read(StudyBytes)"/> gave, without what belongs to the facility's files alone.</returns>
    public static Outcome<StudyIntakeResult> ReadCanonical(StudyBytes files, bool isOfOtherVersion)
    {
        var queries = new QueryList();
        if (StudyReading.Read(files, isCanonical: true, queries) is not { } inputs)
        {
            return Outcome.Stopped<StudyIntakeResult>(queries.ToImmutable());
        }

        var (canonical, data, _) = CanonicalData.Of(inputs);
        if (isOfOtherVersion)
        {
            canonical = new CanonicalFiles([
                .. canonical.Files.Select(file =>
                    CanonicalFile.Of(file.Name, files.Files.GetValueOrDefault(file.Name))
                ),
            ]);
        }
        else
        {
            RequireSameBytes(files, canonical, queries);
        }

        return Conclude(
            inputs,
            canonical,
            Identify(files, canonical, inputs, [], data),
            queries,
            []
        );
    }

    private static Outcome<StudyIntakeResult> Conclude(
        StudyInputs? inputs,
        CanonicalFiles canonical,
        StudyIdentity identity,
        QueryList queries,
        ImmutableArray<DataQuery> rawQueries
    )
    {
        var lasting = queries.ToImmutable();
        return inputs is null || queries.StopCount > 0
            ? Outcome.Stopped<StudyIntakeResult>(lasting)
            : Outcome.Of(
                new StudyIntakeResult(inputs, canonical, identity, lasting),
                [.. lasting, .. rawQueries.Where(query => query.Kind.Worded is not null)]
            );
    }

    private static void RequireSameBytes(
        StudyBytes files,
        CanonicalFiles canonical,
        QueryList queries
    )
    {
        foreach (var file in canonical.Files)
        {
            if (!files.Files[file.Name].Span.SequenceEqual(file.Bytes.Span))
            {
                queries.Add(
                    RowQueries.NotCanonical,
                    new QuerySource(file.Name, null, null),
                    "",
                    "The file has other bytes than its rows give in canonical form."
                );
            }
        }
    }

    // A method of its own, so that what the facility's rows are read with is free before the canonical ones are read.
    private static (CanonicalData Written, ImmutableArray<FileHash> Raw)? WriteCanonical(
        StudyBytes files,
        QueryList queries
    )
    {
        if (StudyReading.Read(files, isCanonical: false, queries) is not { } inputs)
        {
            return null;
        }

        CanonicalData written = null!;
        ImmutableArray<FileHash> raw = [];
        Parallel.Invoke(
            () => written = CanonicalData.Of(inputs),
            () => raw = [.. StudyReading.DataNamesIn(files).Select(name => Hash(files, name))]
        );
        var looks = LookRecord.Joined(
            inputs.Looks,
            LookRecord.Before(files.Files.GetValueOrDefault(StudyRecord.Name), written.Sha256)
        );
        return (
            looks.IsEmpty
                ? written
                : written with
                {
                    Files = new([
                        .. written.Files.Data,
                        CanonicalFiles.Looks([
                            .. looks.Select((look, i) => look with { Number = i + 1 }),
                        ]),
                    ]),
                },
            raw
        );
    }

    private static StudyBytes WithCanonical(StudyBytes files, CanonicalFiles canonical) =>
        canonical.Files.Aggregate(files, (all, file) => all.With(file.Name, file.Bytes));

    private static StudyIdentity Identify(
        StudyBytes files,
        CanonicalFiles canonical,
        StudyInputs? read,
        ImmutableArray<FileHash> raw,
        string dataSha256
    )
    {
        ImmutableArray<FileHash> inputs =
        [
            Hash(files, StudyBytes.ProtocolName),
            Hash(files, StudyBytes.FactsName),
            .. files.Files.ContainsKey(LockFile.Name)
                ? [Hash(files, LockFile.Name)]
                : ImmutableArray<FileHash>.Empty,
            .. LockedProtocols
                .NamesIn(files.Files, read?.Locks ?? [])
                .Select(name => Hash(files, name)),
            .. canonical.Files.Select(file => new FileHash(file.Name, file.Sha256)),
        ];
        return new StudyIdentity(InputDigest.Compute(inputs), inputs, raw)
        {
            DataSha256 = read is null ? "" : dataSha256,
        };
    }

    private static FileHash Hash(StudyBytes files, string name) =>
        new(name, InputDigest.Sha256(files.Files[name].Span));
}
