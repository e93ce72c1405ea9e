using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Planning;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Starting;

/// <summary>Takes out of a protocol what a reduced study of its approved windows does not repeat.</summary>
internal sealed class ProtocolReduction
{
    private readonly StudyProtocol _protocol;
    private readonly ImmutableArray<RepeatedWindow> _windows;
    private readonly StudyProtocol _kept;

    public ProtocolReduction(StudyProtocol protocol, ImmutableArray<RepeatedWindow> windows)
    {
        (_protocol, _windows) = (protocol, windows);
        _kept = protocol with
        {
            Analytes = [.. protocol.Analytes.Where(item => Analytes.Contains(item.Id))],
            Criteria =
            [
                .. protocol
                    .Criteria.Where(Keeps)
                    .Select(criterion =>
                        criterion with
                        {
                            Limits =
                            [
                                .. criterion.Limits.Where(choice =>
                                    Analytes.Contains(choice.Analyte)
                                ),
                            ],
                        }
                    ),
            ],
        };
        Numbers =
        [
            .. protocol
                .Groups.Where(group => Groups.Contains(group.Id))
                .Select(group => ReducedNumber.Of(_kept, group)),
        ];
    }

    public ImmutableArray<ReducedNumber> Numbers { get; }

    /// <summary>What is not repeated.</summary>
    public ImmutableArray<string> Left =>
        [
            .. _protocol.Analytes.SelectMany(analyte =>
                _protocol.Groups.SelectMany(group =>
                    _protocol
                        .Storages.Where(storage =>
                            (analyte.Groups.IsEmpty || analyte.Groups.Contains(group.Id))
                            && (analyte.Storages.IsEmpty || analyte.Storages.Contains(storage.Id))
                            && !_windows.Any(window =>
                                (window.Analyte, window.Group, window.Storage)
                                == (analyte.Id, group.Id, storage.Id)
                            )
                        )
                        .Select(storage =>
                            $"{analyte.Id} in {group.Id}, {storage.Id}: no window beyond today's rule was approved"
                        )
                )
            ),
            .. _protocol
                .Criteria.Where(criterion => !Keeps(criterion))
                .Select(criterion =>
                    criterion.Kind == CriterionKind.Drift
                        ? $"criterion {criterion.Id}: a drift takes more times than are repeated"
                        : $"criterion {criterion.Id}: of groups or analytes that are not repeated"
                ),
        ];

    /// <summary>Why so many specimens and these times, a line each.</summary>
    public IEnumerable<string> Reasons() =>
        _windows
            .Select(window => (window.Analyte, window.Group))
            .Distinct()
            .Select(row =>
                Times(row.Analyte, row.Group) is var times && times.Length > 1
                    ? $"{row.Analyte}, {row.Group}: {Written(times[^1])} is the longest approved time; {string.Join(", ", times[..^1].Select(Written))} on the way, since no first time lies beyond twice today's rule."
                    : $"{row.Analyte}, {row.Group}: {Written(times[^1])} is the longest approved time."
            )
            .Concat(Numbers.Select(ReducedNumberWords.Of));

    /// <summary>The reduced protocol.</summary>
    public TomlEntries Of(TomlEntries root, string version, RepeatOf repeat)
    {
        ImmutableArray<string> gone =
        [
            ProtocolKeys.Version.Name,
            ProtocolKeys.Repeat.Name,
            ProtocolKeys.TimePoints.Name,
            ProtocolKeys.DelaysPerSpecimen.Name,
            // A planned extension belongs to the original.
            ProtocolKeys.Looks.Name,
        ];
        ImmutableArray<TomlEntry> kept =
        [
            .. root.Entries.Where(entry => !gone.Contains(entry.Key)).Select(Changed),
        ];
        var first = kept.TakeWhile(entry =>
                entry.Key == ProtocolKeys.Format.Name || entry.Key == ProtocolKeys.Code.Name
            )
            .Count();
        return new(
            1,
            [
                .. kept[..first],
                Entry(ProtocolKeys.Version, Text(version)),
                Entry(
                    ProtocolKeys.Repeat,
                    Table(
                        Entry(RepeatKeys.Report, Text(repeat.Report)),
                        Entry(RepeatKeys.Digest, Text(repeat.Digest)),
                        Entry(RepeatKeys.Tier, Text(FileWords.RepeatTiers.Write(repeat.Tier))),
                        Entry(RepeatKeys.Reason, Text(repeat.Reason))
                    )
                ),
                Entry(
                    ProtocolKeys.TimePoints,
                    TimeList(_windows.SelectMany(window => Times(window.Analyte, window.Group)))
                ),
                .. kept[first..],
            ]
        );
    }

    private ImmutableHashSet<string> Analytes => [.. _windows.Select(window => window.Analyte)];

    private ImmutableHashSet<string> Groups => [.. _windows.Select(window => window.Group)];

    private ImmutableHashSet<string> Storages => [.. _windows.Select(window => window.Storage)];

    private ImmutableHashSet<string> GroupsOf(string analyte) =>
        [.. _windows.Where(window => window.Analyte == analyte).Select(window => window.Group)];

    private bool Keeps(Criterion criterion) =>
        criterion.Kind != CriterionKind.Drift
        && criterion.Limits.Any(choice => Analytes.Contains(choice.Analyte))
        && Groups.Any(criterion.AppliesTo);

    /// <summary>The longest approved time, after the last time of the original that lies within twice today's rule where it is beyond that.</summary>
    private ImmutableArray<TimeSpan> Times(string analyte, string group)
    {
        var approved = _windows
            .Where(window => window.Analyte == analyte && window.Group == group)
            .ToImmutableArray();
        var longest = approved
            .Select(window => window.Approved)
            .Distinct()
            .Order()
            .ToImmutableArray();
        var item = _protocol.Analytes.Single(candidate => candidate.Id == analyte);
        var first =
            StudyProtocol.FirstTestWithinWindows
            * approved.Min(window => item.StandardWindowOf(group, window.Storage).Time);
        return longest[0] <= first
            ? longest
            :
            [
                _protocol
                    .TimePointsOf(item, group)
                    .Select(time => time.Delay)
                    .Where(time => time <= first)
                    .DefaultIfEmpty(first)
                    .Max(),
                .. longest,
            ];
    }

    private TomlEntry Changed(TomlEntry entry) =>
        entry.Key == ProtocolKeys.Groups.Name
            ? entry with
            {
                Value = List(entry, GroupKeys.Id, Groups, Group),
            }
        : entry.Key == ProtocolKeys.Storages.Name
            ? entry with
            {
                Value = List(entry, StorageKeys.Id, Storages, storage => storage),
            }
        : entry.Key == ProtocolKeys.Analytes.Name
            ? entry with
            {
                Value = List(entry, AnalyteKeys.Id, Analytes, Analyte),
            }
        : entry.Key == ProtocolKeys.Criteria.Name
            ? entry with
            {
                Value = List(
                    entry,
                    CriterionKeys.Id,
                    [.. _kept.Criteria.Select(item => item.Id)],
                    CriterionOf
                ),
            }
        : entry.Key == ProtocolKeys.Limits.Name
            ? entry with
            {
                Value = List(
                    entry,
                    LimitKeys.Id,
                    [
                        .. _kept
                            .Criteria.SelectMany(item => item.Limits)
                            .Select(choice => choice.Limit)
                            .OfType<string>(),
                    ],
                    limit => limit
                ),
            }
        : entry;

    private TomlEntries Group(TomlEntries group) =>
        With(
            Without(group, GroupKeys.Why),
            Entry(
                GroupKeys.Specimens,
                new TomlNumber(
                    0,
                    Numbers
                        .Single(number => number.Group == TextOf(group, GroupKeys.Id))
                        .Specimens.ToString(CultureInfo.InvariantCulture)
                )
            ),
            Entry(
                GroupKeys.Why,
                Text(
                    "reduced repeat: "
                        + ReducedNumberWords.Reason(
                            Numbers.Single(number => number.Group == TextOf(group, GroupKeys.Id))
                        )
                )
            )
        );

    private TomlEntries Analyte(TomlEntries analyte)
    {
        var id = TextOf(analyte, AnalyteKeys.Id);
        var groups = GroupsOf(id);
        var item = _protocol.Analytes.Single(candidate => candidate.Id == id);
        Key[] gone =
        [
            AnalyteKeys.TimePoints,
            AnalyteKeys.Groups,
            AnalyteKeys.Storages,
            AnalyteKeys.GroupWindows,
            // Numbers and chances of the original.
            AnalyteKeys.PlannedNumbers,
            AnalyteKeys.ExpectedChanges,
            .. item.RatioOf is { } time && !Analytes.Contains(time)
                ? new Key[] { AnalyteKeys.RatioOf }
                : [],
        ];
        var kept = new TomlEntries(
            0,
            [
                .. Without(analyte, gone)
                    .Entries.Select(entry =>
                        entry.Key == AnalyteKeys.LevelMeanings.Name
                        || entry.Key == AnalyteKeys.PlannedRanges.Name
                        || entry.Key == AnalyteKeys.OtherWindows.Name
                            ? entry with
                            {
                                Value = new TomlList(
                                    0,
                                    "",
                                    [
                                        .. ((TomlList)entry.Value).Items.Where(inner =>
                                            TextOf((TomlEntries)inner, "group")
                                                is not { Length: > 0 } group
                                            || groups.Contains(group)
                                        ),
                                    ]
                                ),
                            }
                            : entry
                    )
                    .Where(entry => entry.Value is not TomlList { Items.IsEmpty: true }),
            ]
        );
        return With(
            kept,
            [
                Entry(
                    AnalyteKeys.Groups,
                    Codes(_protocol.Groups.Select(group => group.Id).Where(groups.Contains))
                ),
                Entry(
                    AnalyteKeys.Storages,
                    Codes(
                        _protocol
                            .Storages.Select(storage => storage.Id)
                            .Where(storage =>
                                _windows.Any(window =>
                                    (window.Analyte, window.Storage) == (id, storage)
                                )
                            )
                    )
                ),
                Entry(
                    AnalyteKeys.GroupWindows,
                    new TomlList(
                        0,
                        "",
                        [
                            .. groups
                                .Order(StringComparer.Ordinal)
                                .SelectMany(group => Windows(analyte, item, group)),
                        ]
                    )
                ),
            ]
        );
    }

    /// <summary>Today's rules of a group, with the times at which it is tested.</summary>
    private IEnumerable<TomlEntries> Windows(TomlEntries analyte, Analyte item, string group)
    {
        ImmutableArray<TomlEntries> given =
        [
            .. (
                Value(analyte, AnalyteKeys.GroupWindows) is TomlList list
                    ? list.Items.Cast<TomlEntries>()
                    : []
            ).Where(window =>
                TextOf(window, GroupWindowKeys.Group) == group
                && (
                    TextOf(window, GroupWindowKeys.Storage) is not { Length: > 0 } storage
                    || Storages.Contains(storage)
                )
            ),
        ];
        var times = Entry(GroupWindowKeys.TimePoints, TimeList(Times(item.Id, group)));
        var ofGroup = given.FirstOrDefault(window =>
            Value(window, GroupWindowKeys.Storage) is null
        );
        yield return With(
            ofGroup is null
                ? Table([
                    Entry(GroupWindowKeys.Group, Text(group)),
                    .. ((TomlEntries)Value(analyte, AnalyteKeys.StandardWindow)!).Entries,
                ])
                : Without(ofGroup, GroupWindowKeys.TimePoints),
            times
        );
        foreach (var window in given.Where(window => window != ofGroup))
        {
            yield return window;
        }
    }

    private TomlEntries CriterionOf(TomlEntries criterion) =>
        new(
            0,
            [
                .. criterion.Entries.Select(entry =>
                    entry switch
                    {
                        { Value: TomlEntries limits } when entry.Key == CriterionKeys.Limits.Name =>
                            entry with
                            {
                                Value = new TomlEntries(
                                    0,
                                    [.. limits.Entries.Where(limit => Analytes.Contains(limit.Key))]
                                ),
                            },
                        { Value: TomlList list } when entry.Key == CriterionKeys.Groups.Name =>
                            entry with
                            {
                                Value = Only(list, Groups),
                            },
                        { Value: TomlList list } when entry.Key == CriterionKeys.Analytes.Name =>
                            entry with
                            {
                                Value = Only(list, Analytes),
                            },
                        _ => entry,
                    }
                ),
            ]
        );

    private static TomlList Only(TomlList list, ImmutableHashSet<string> codes) =>
        new(
            0,
            "",
            [.. list.Items.Where(item => item is TomlText text && codes.Contains(text.Content))]
        );

    private static TomlList List(
        TomlEntry entry,
        Key id,
        ImmutableHashSet<string> codes,
        Func<TomlEntries, TomlEntries> change
    ) =>
        new(
            0,
            "",
            [
                .. ((TomlList)entry.Value)
                    .Items.Cast<TomlEntries>()
                    .Where(item => codes.Contains(TextOf(item, id)))
                    .Select(change),
            ]
        );

    private static TomlList TimeList(IEnumerable<TimeSpan> times) =>
        Codes(times.Distinct().Order().Select(Written));

    private static string Written(TimeSpan time) => DurationText.Format(time);

    private static TomlList Codes(IEnumerable<string> codes) => new(0, "", [.. codes.Select(Text)]);

    private static TomlValue Text(string content) => new TomlText(0, "", content);

    private static TomlEntries Table(params ImmutableArray<TomlEntry> entries) => new(0, entries);

    private static TomlEntry Entry(Key key, TomlValue value) => new(key.Name, 0, value);

    private static TomlValue? Value(TomlEntries table, Key key) =>
        table.Entries.FirstOrDefault(entry => entry.Key == key.Name)?.Value;

    private static string TextOf(TomlEntries table, Key key) => TextOf(table, key.Name) ?? "";

    private static string? TextOf(TomlEntries table, string key) =>
        (table.Entries.FirstOrDefault(entry => entry.Key == key)?.Value as TomlText)?.Content;

    private static TomlEntries Without(TomlEntries table, params Key[] keys) =>
        new(table.Line, [.. table.Entries.Where(entry => keys.All(key => key.Name != entry.Key))]);

    private static TomlEntries With(TomlEntries table, params ImmutableArray<TomlEntry> entries) =>
        new(
            table.Line,
            [
                .. table.Entries.Where(entry => entries.All(other => other.Key != entry.Key)),
                .. entries,
            ]
        );
}
