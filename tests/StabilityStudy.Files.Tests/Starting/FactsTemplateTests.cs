using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Starting;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Tests.Starting;

/// <summary>A new study.toml names every key that a study.toml may have, and is one.</summary>
public sealed class FactsTemplateTests
{
    private static readonly NewStudy s_study = new(
        "any-protocol",
        "A \"quoted\" title with a \\",
        "Invented laboratory",
        "May it wait?",
        "Europe/Berlin",
        [new Person("LS1", "Lab Scientist One", "lab scientist")],
        [new Instrument("AN1", "Invented analyzer")],
        [new Lot("R-1", "reagent", "aPTT", new DateOnly(2027, 1, 31))],
        Invented: true
    );

    private const StringComparison Ordinal = StringComparison.Ordinal;

    private static readonly string s_text = FactsTemplate.Write(s_study);

    private static readonly string[] s_lines = s_text.Split('\n');

    [Fact]
    public void Every_key_is_explained_and_has_a_line_of_its_own()
    {
        var count = 0;
        foreach (var (path, key) in Keys("", FactsKeys.Table))
        {
            count++;
            Assert.Contains(
                s_lines,
                line =>
                    line.TrimStart('#', ' ').StartsWith(key.Name + ": ", Ordinal)
                    || line.TrimStart('#', ' ').StartsWith(key.Name + " (needed): ", Ordinal)
            );
            // The group of the layouts has no lines of its own.
            if (key.Name != FactsKeys.Read.Name)
            {
                Assert.Contains(s_lines, line => IsOf(line.TrimStart('#'), path, key));
            }
        }

        Assert.True(count > 80, $"{count} keys");
    }

    [Fact]
    public void It_is_a_study_toml_with_what_was_known_and_nothing_else()
    {
        var outcome = StudyFactsReader.Read(Encoding.UTF8.GetBytes(s_text), "study.toml");

        Assert.Empty(outcome.Queries);
        Assert.True(outcome.TryGet(out var facts));
        Assert.Equal(s_study.Title, facts.Title);
        Assert.Equal(s_study.Facility, facts.Facility);
        Assert.Equal(s_study.Question, facts.Question);
        Assert.Equal(s_study.TimeZone, facts.TimeZone);
        Assert.True(facts.Invented);
        Assert.Equal(s_study.People, facts.People);
        Assert.Equal(s_study.Instruments, facts.Instruments);
        Assert.Equal(s_study.Lots, facts.Lots);
        Assert.Empty(facts.Clocks);
        Assert.Empty(facts.Exclusions);
        Assert.Empty(facts.Deviations);
        Assert.Empty(facts.Reruns);
        Assert.Empty(facts.NotDrawn);
        Assert.Empty(facts.TranscriptionChecks);
        Assert.Empty(facts.Answers);
        Assert.Null(facts.EndedEarly);
    }

    [Fact]
    public void With_every_sign_of_a_comment_taken_away_its_examples_can_be_read()
    {
        var text = string.Join(
            '\n',
            s_lines.Select(line => line is ['#', '[' or (>= 'a' and <= 'z'), ..] ? line[1..] : line)
        );
        var queries = new QueryList();

        var draft = StudyFactsReader.Read(Encoding.UTF8.GetBytes(text), "study.toml", queries);
        var read = draft!.Root.OptionalTable(FactsKeys.Read);
        _ = LayoutReader.FindPairs(read, needsZoneRules: true);

        Assert.Empty(queries.ToImmutable().Select(query => $"{query.Source}: {query.Message}"));
        Assert.Single(draft.Exclusions.Items);
        Assert.Single(draft.TranscriptionChecks.Items);
        Assert.NotNull(draft.EndedEarly);
    }

    [Fact]
    public void What_is_not_known_stays_a_comment()
    {
        var text = FactsTemplate.Write(
            s_study with
            {
                TimeZone = null,
                Instruments = [],
                Lots = [],
                Invented = false,
            }
        );

        Assert.Contains("\n#time_zone = ", text, StringComparison.Ordinal);
        Assert.Contains("\n#[[instrument]]\n", text, StringComparison.Ordinal);
        Assert.Contains("\n#[[lot]]\n", text, StringComparison.Ordinal);
        Assert.Contains("\n#invented = true\n", text, StringComparison.Ordinal);
        Assert.True(
            StudyFactsReader.Read(Encoding.UTF8.GetBytes(text), "study.toml").TryGet(out var facts)
        );
        Assert.False(facts.Invented);
        Assert.Null(facts.TimeZone);
    }

    [Fact]
    public void Its_lines_fit_an_editor() =>
        Assert.All(s_text.Split('\n'), line => Assert.True(line.Length <= 102, line));

    /// <summary>Whether a line is the header of a table, or gives a value.</summary>
    private static bool IsOf(string line, string path, Key key) =>
        key is TableKey { Keys.Keys.Count: > 0 }
            ? line == $"[{path}]" || line == $"[[{path}]]"
            : line.StartsWith(key.Name + " = ", Ordinal);

    private static IEnumerable<(string Path, Key Key)> Keys(string path, KeyTable table) =>
        table.Keys.SelectMany(key =>
            key is TableKey inner && !inner.IsDescribedElsewhere
                ? Keys($"{path}{key.Name}.", inner.Keys).Prepend((path + key.Name, key))
                : [(path + key.Name, key)]
        );
}
