namespace StabilityStudy.Files.Suggestions;

/// <summary>
/// Finds which tube of a specimen was tested at a time point, for files that name the specimen and the time point alone: the tube that
/// was spun last before the test. Without times of spinning a person is asked.
/// </summary>
internal static class TubesOfTimePoints
{
    private const double Nearly = 0.9;
    private const int MostTubes = 40;

    /// <summary>Drafts the tubes.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="study">What is known of the study.</param>
    /// <param name="tests">Specimen, time point and time of each test.</param>
    public static void Draft(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<(string Specimen, TestOccasion Occasion, DateTime Tested)> tests
    )
    {
        var tubes = study.Tubes.ToLookup(tube => tube.Specimen, StringComparer.Ordinal);
        ImmutableArray<(string Specimen, TestOccasion Occasion, string? Key)> found =
        [
            .. tests
                .Where(test => tubes.Contains(test.Specimen))
                .Select(test =>
                    (test.Specimen, test.Occasion, KeyOf(tubes[test.Specimen], test.Tested))
                ),
        ];
        var kinds = Kinds(found.Select(test => test.Specimen));
        foreach (var split in new[] { [""], kinds })
        {
            if (Assigned(found, split) is { } entries)
            {
                draft.Lines.Add(new("time_point_of_tube", TomlLiteral.Braces(entries)));
                draft.Settings.Add(
                    new(
                        "tubes",
                        "by time point",
                        HowSure.Sure,
                        string.Join(", ", entries.Select(entry => $"{entry.Key} {entry.Occasion}"))
                            + FormattableString.Invariant(
                                $": spun within the hour before the test in {found.Count(test => test.Key is not null)} of {tests.Length}"
                            )
                    )
                );
                return;
            }
        }

        draft.Settings.Add(
            new(
                "tubes",
                "",
                HowSure.Ask,
                "no column names the tube, and no time of spinning shows it"
            )
        );
        ImmutableArray<string> names =
        [
            .. study.Tubes.Select(Name).Distinct().Order(StringComparer.Ordinal),
        ];
        if (names.Length == 0 || names.Length > MostTubes)
        {
            names = ["A", "B", "C", "D", "E", "F", "G", "H", "I", "J", "K", "L"];
        }

        draft.Lines.Add(
            new ReadLine(
                "time_point_of_tube",
                TomlLiteral.Braces(
                    study.Occasions.Zip(names, (occasion, name) => (name, occasion.ToString()))
                )
            ).Answering(
                draft.Ask(
                    $"Which tube was tested at each time point? {draft.Table.File} does not say. Correct time_point_of_tube where it is wrong, and uncomment it.",
                    couldChangeNumbers: false,
                    key: "time_point_of_tube"
                ),
                isTried: true
            )
        );
    }

    /// <summary>The entries of time_point_of_tube, where each time point has one tube in each kind of specimen, by its code's beginning.</summary>
    private static ImmutableArray<(string Key, string Occasion)>? Assigned(
        ImmutableArray<(string Specimen, TestOccasion Occasion, string? Key)> found,
        ImmutableArray<string> kinds
    )
    {
        var entries = ImmutableArray.CreateBuilder<(string, string)>();
        foreach (var kind in kinds)
        {
            foreach (
                var occasion in found
                    .Where(test => test.Specimen.StartsWith(kind, StringComparison.Ordinal))
                    .GroupBy(test => test.Occasion)
                    .OrderBy(group => group.Key.TimePoint?.Delay ?? TimeSpan.Zero)
            )
            {
                var keys = occasion
                    .GroupBy(test => test.Key)
                    .OrderByDescending(group => group.Count())
                    .ToArray();
                if (
                    keys[0].Key is not { } key
                    || keys[0].Count() < Nearly * occasion.Count()
                    || (kind.Length > 0 && !key.StartsWith('*'))
                )
                {
                    return null;
                }

                entries.Add((kind + key, occasion.Key.ToString()));
            }
        }

        return
            entries.Count > 0 && entries.DistinctBy(entry => entry.Item1).Count() == entries.Count
            ? entries.ToImmutable()
            : null;
    }

    private static string? KeyOf(IEnumerable<TubeRow> tubes, DateTime tested)
    {
        var spun = tubes
            .Where(tube =>
                tube.SpunAt is { } time
                && tested - time.DateTime is var wait
                && wait >= TimeSpan.Zero
                && wait <= TimeSpan.FromHours(1)
            )
            .Select(Name)
            .Distinct()
            .ToArray();
        return spun is [var only] ? only : null;
    }

    // A code that begins with that of the specimen is named by what follows it.
    private static string Name(TubeRow tube) =>
        tube.Tube.Length > tube.Specimen.Length
        && tube.Tube.StartsWith(tube.Specimen, StringComparison.Ordinal)
            ? "*" + tube.Tube[tube.Specimen.Length..]
            : tube.Tube;

    /// <summary>What stands before the first digit of the specimens' codes, where it is one of a few.</summary>
    public static ImmutableArray<string> Kinds(IEnumerable<string> specimens)
    {
        const int Most = 6;
        ImmutableArray<string> kinds =
        [
            .. specimens
                .Select(specimen =>
                    specimen[..Math.Max(0, specimen.AsSpan().IndexOfAnyInRange('0', '9'))]
                )
                .Distinct()
                .Order(StringComparer.Ordinal)
                .Take(Most + 1),
        ];
        return kinds.Length > Most || kinds.Contains("") ? [] : kinds;
    }
}
