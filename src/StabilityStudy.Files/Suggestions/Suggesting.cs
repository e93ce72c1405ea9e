using StabilityStudy.Core.Study;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Looks at every table of the folder that is not read as it is, finds what it holds, and drafts its description.</summary>
internal sealed class Suggesting
{
    private static readonly ImmutableArray<string> s_settings =
    [
        "encoding",
        "sheet",
        "delimiter",
        "decimal",
        "numbers",
        "header",
        "units",
        "blocks",
        "footer",
        "odd rows",
        "spaces",
        "dates",
    ];

    private readonly StudyBytes _files;
    private readonly Surroundings _study;
    private readonly DescribedFiles _described;
    private readonly TableWords _words;
    private readonly List<SuggestedFile> _shown = [];
    private readonly List<SuggestedQuestion> _questions = [];
    private readonly List<(string Section, string Text)> _tables = [];

    private Suggesting(StudyBytes files, Surroundings study, DescribedFiles described) =>
        (_files, _study, _described, _words) = (files, study, described, new(study));

    /// <summary>Looks at the files of a study.</summary>
    public static Outcome<StudySuggestion> Of(StudyBytes files, DateTimeOffset asOf)
    {
        var queries = new QueryList { IsCollecting = true };
        if (
            !files.Files.TryGetValue(StudyBytes.ProtocolName, out var protocolBytes)
            || !files.Files.TryGetValue(StudyBytes.FactsName, out var factsBytes)
        )
        {
            return Outcome.Stopped<StudySuggestion>(StudyIntake.ReadCollecting(files).Queries);
        }

        var protocol = ProtocolReader.Read(protocolBytes, StudyBytes.ProtocolName, queries);
        var facts = StudyFactsReader.Read(factsBytes, StudyBytes.FactsName, queries);
        if (protocol is null || facts is null || queries.StopCount > 0)
        {
            return Outcome.Stopped<StudySuggestion>(queries.ToImmutable());
        }

        var known = StudyCodes.From(protocol, facts, FlagSet.None);
        var entries = TomlDocument.Read(factsBytes, StudyBytes.FactsName, new QueryList());
        var read =
            entries?.Entries.FirstOrDefault(entry => entry.Key == FactsKeys.Read.Name)?.Value
            as TomlEntries;
        var reading = new QueryList { IsCollecting = true };
        var sound = StudyReading.ReadSound(files, isCanonical: false, reading);
        var stopped = reading
            .ToImmutable()
            .Where(query => query.Severity == Severity.Stop)
            .Select(query => query.Source.File)
            .ToHashSet();
        var used = StudyReading
            .DataNamesIn(files)
            .Where(name => !stopped.Contains(name))
            .ToHashSet();
        var data = StudyReading.DataFilesOf(files);
        var tubes =
            sound is not null && data.Specimens.AllStored.All(used.Contains) ? sound.Tubes : [];
        return Outcome.Of(
            new Suggesting(
                files,
                new(protocol, known, tubes, asOf.DateTime),
                new(files, read)
            ).Look([
                .. files.Files.Keys.Where(name =>
                    PlainNames.MayBeTable(name)
                    && name != StudyFileNames.Looks
                    && !used.Contains(name)
                ),
            ]),
            []
        );
    }

    private StudySuggestion Look(ImmutableArray<string> names)
    {
        var found = new List<(DeliveredTable Table, KindOfTable Kind)>();
        foreach (var name in names)
        {
            var (tables, reason) = DeliveredTable.Of(
                name,
                _files.Files[name],
                _words.IsName,
                _described.Stated(name),
                _study
            );
            if (tables.IsEmpty)
            {
                LeaveAside(name, reason);
            }

            foreach (var table in tables)
            {
                var kind = table.IsOfMessages
                    ? KindOfTable.Results
                    : _described.KindOf(name) ?? _words.KindOf(table);
                if (kind is null)
                {
                    LeaveAside(
                        name,
                        KindOfTable.IsOfTemperatures(ColumnProfile.Of(table.Shape))
                            ? "temperatures: write their lowest and highest into [[temperature]]"
                            : "nothing shows that it holds tubes, results or controls"
                    );
                    continue;
                }

                found.Add((table, kind));
            }
        }

        // A row a specimen with its collection time needs no file of tubes; where there is one, the results are read beside it.
        if (_study.Tubes.IsEmpty && found.All(item => item.Kind != KindOfTable.Specimens))
        {
            found =
            [
                .. found.Select(item =>
                    item.Kind == KindOfTable.Results && _words.IsOfPairs(item.Table)
                        ? (item.Table, KindOfTable.Pairs)
                        : item
                ),
            ];
        }

        var study = _study;
        foreach (var kind in KindOfTable.All)
        {
            var alike = found
                .Where(item => item.Kind == kind)
                .Select(item => item.Table)
                .GroupBy(FormOf)
                .OrderByDescending(group => group.Sum(table => table.Shape.Rows.Length))
                .ToArray();
            if (alike is not [var first, .. var others])
            {
                continue;
            }

            var rows = Draft(kind, [.. first], study);
            if (kind == KindOfTable.Specimens && rows is not null)
            {
                study = study with { Tubes = rows.Tubes };
            }

            foreach (var other in others.SelectMany(group => group))
            {
                LeaveAside(
                    other.File,
                    $"{kind.Section} in another form than {first.First().File}: one form of a kind can be read"
                );
                _questions.Add(
                    new(
                        $"{other.File} and {first.First().File} both hold {kind.Section}, in different forms. Export them in one form, or keep the one that is right.",
                        false
                    )
                );
            }
        }

        return new([.. _shown], [.. _questions], [.. _tables]);
    }

    private ProposedRows? Draft(
        KindOfTable kind,
        ImmutableArray<DeliveredTable> tables,
        Surroundings study
    )
    {
        var table = tables is [var only]
            ? only
            : tables[0] with
            {
                Shape = tables[0].Shape with
                {
                    Rows = [.. tables.SelectMany(item => item.Shape.Rows)],
                },
            };
        var draft = new SectionDraft(kind, table, _described.Stated(table.File), _questions)
        {
            CodesAreDeclared = study.Known.CodesAreDeclared,
        };
        draft.MoreFiles.AddRange(tables.Skip(1).Select(item => item.File));
        _described.AskAboutOther(draft);
        draft.AskOfDialect();
        var (reading, other) = kind.Draft(draft, study);
        var rows = ProposedRows.Of(draft, _files, study);
        if (rows?.Stops(study.Protocol) is { Length: > 0 } stops)
        {
            draft.Settings.Add(
                new("queries", "", HowSure.Ask, $"even so check would stop at {stops}")
            );
        }

        _shown.Add(
            new(
                string.Join(", ", draft.Files),
                table.Extent,
                kind.Section,
                [
                    .. draft.Settings.OrderBy(setting =>
                        s_settings.IndexOf(setting.Name) is >= 0 and var place
                            ? place
                            : s_settings.Length
                    ),
                ],
                draft.Columns,
                rows?.Three(reading, other, study.AsOf)
            )
        );
        _tables.Add((kind.Section, ReadText.Write(draft, isTrial: false)));
        return rows;
    }

    private void LeaveAside(string name, string reason) =>
        _shown.Add(
            new(
                name,
                FormattableString.Invariant($"{_files.Files[name].Length:N0} bytes"),
                "",
                [new("left aside", "", HowSure.Likely, reason)],
                [],
                null
            )
        );

    // Files of one form have the same header and dialect.
    private static string FormOf(DeliveredTable table) =>
        string.Join(
            '\n',
            table.Shape.Header.Names.Concat(table.Lines.Select(line => $"{line.Key}={line.Value}"))
        );
}
