using System.Reflection;
using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Cli.Protocols;

/// <summary>A protocol that comes with the program, to be copied and adapted.</summary>
/// <param name="Name">Its file name without ending.</param>
/// <param name="Question">What a study after it asks, from its first line.</param>
/// <param name="Text">The file, comments included.</param>
internal sealed record ReadyProtocol(string Name, string Question, string Text)
{
    private const string Ending = ".toml";
    private const string FirstWords = "# READY PROTOCOL: ";

    private static readonly Assembly s_program = typeof(ReadyProtocol).Assembly;

    /// <summary>The names of all, in their order.</summary>
    public static IEnumerable<string> Names =>
        s_program
            .GetManifestResourceNames()
            .Where(name => name.EndsWith(Ending, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => name[..^Ending.Length]);

    /// <summary>Every ready protocol, by name.</summary>
    public static ImmutableArray<ReadyProtocol> All() => [.. Names.Select(Read)];

    /// <summary>The one with a name.</summary>
    /// <exception cref="UsageException">There is none.</exception>
    public static ReadyProtocol Find(string name) =>
        Names.Contains(name, StringComparer.Ordinal)
            ? Read(name)
            : throw new UsageException(
                $"There is no ready protocol \"{name}\".{NearestWord.Question(name, Names)} There are: {string.Join(", ", Names)}."
            );

    /// <summary>The codes of its analytes.</summary>
    public ImmutableArray<string> AnalyteCodes() =>
        ProtocolReader
            .Read(Encoding.UTF8.GetBytes(Text), StudyBytes.ProtocolName)
            .TryGet(out var protocol)
            ? [.. protocol.Analytes.Select(analyte => analyte.Id)]
            : [];

    /// <exception cref="InvalidOperationException">The file was built in without the first line that says what it asks; a defect.</exception>
    private static ReadyProtocol Read(string name)
    {
        using var stream =
            s_program.GetManifestResourceStream(name + Ending)
            ?? throw new InvalidOperationException($"{name} is not built in.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var text = reader.ReadToEnd().ReplaceLineEndings("\n");
        var firstLine = text[..text.IndexOf('\n', StringComparison.Ordinal)];
        if (!firstLine.StartsWith(FirstWords, StringComparison.Ordinal))
        {
            throw new InvalidOperationException($"{name} does not begin with \"{FirstWords}\".");
        }

        return new ReadyProtocol(
            name,
            char.ToUpperInvariant(firstLine[FirstWords.Length])
                + firstLine[(FirstWords.Length + 1)..],
            text
        );
    }
}
