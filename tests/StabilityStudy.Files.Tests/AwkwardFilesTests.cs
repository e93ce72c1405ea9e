using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Suggestions;

namespace StabilityStudy.Files.Tests;

/// <summary>The list of awkward files is long enough, names each once, and each becomes what it says.</summary>
public sealed class AwkwardFilesTests
{
    /// <summary>How many there must be.</summary>
    private const int Fewest = 150;

    private static readonly DateTimeOffset s_asOf = new(
        2026,
        3,
        27,
        12,
        0,
        0,
        TimeSpan.FromHours(1)
    );

    [Fact]
    public void There_are_enough_and_none_stands_there_twice()
    {
        var all = AwkwardFiles.All;

        Assert.True(all.Length >= Fewest, $"{all.Length}");
        Assert.Empty(
            all.GroupBy(file => (file.Kind, file.Name))
                .Where(same => same.Skip(1).Any())
                .Select(same => same.Key)
        );
        Assert.Empty(
            all.GroupBy(file => Digest(file.Files))
                .Where(same => same.Skip(1).Any())
                .Select(same =>
                    string.Join(" = ", same.Select(file => $"{file.Kind}: {file.Name}"))
                )
        );
        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Join(
                '\n',
                all.GroupBy(file => file.Kind)
                    .Select(kind => $"{kind.Count()} {kind.Key}")
                    .Prepend($"{all.Length}")
            )
        );
    }

    [Fact]
    public void Each_becomes_what_the_list_says()
    {
        foreach (var file in AwkwardFiles.All)
        {
            var outcome = StudyIntake.Read(file.Files);
            Assert.True(
                file.Becomes.Split(' ', 2) switch
                {
                    ["query", var code] => outcome.Queries.Any(query => query.Code == code),
                    ["question", var words] => StudySuggestion
                        .Of(file.Files, s_asOf)
                        .TryGet(out var suggestion)
                        && suggestion.Questions.Any(question =>
                            question.Text.Contains(words, StringComparison.Ordinal)
                        ),
                    _ => file.Becomes == AwkwardFiles.PlainData
                        && outcome.TryGet(out _)
                        && outcome.Queries.All(query => query.Severity != Severity.Stop),
                },
                $"{file.Kind}: {file.Name} does not become {file.Becomes}"
            );
        }
    }

    private static string Digest(StudyBytes files)
    {
        using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (name, bytes) in files.Files)
        {
            digest.AppendData(Encoding.UTF8.GetBytes($"{name} {bytes.Length}\n"));
            digest.AppendData(bytes.Span);
        }

        return Convert.ToHexString(digest.GetHashAndReset());
    }
}
