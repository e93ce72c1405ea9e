using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Protocols;
using StabilityStudy.Core.Study;
using StabilityStudy.Core.Text;
using StabilityStudy.Files.Starting;

namespace StabilityStudy.Cli.Commands;

/// <summary>What the options of start say; null and empty where they say nothing.</summary>
internal sealed record StartOptions(
    string Folder,
    string? Protocol,
    string? Code,
    string? Title,
    string? Question,
    string? Facility,
    string? TimeZone,
    ImmutableArray<string> People,
    ImmutableArray<string> Instruments,
    ImmutableArray<string> Lots,
    bool Invented
);

/// <summary>What start knows of a new study, from its options and from the person who is asked.</summary>
internal static class StartAnswers
{
    /// <summary>The answer that times will be written with their offset.</summary>
    public const string NoZone = "none";

    private const int LongestCode = 60;
    private const string Author = "LS1";
    private const string Approver = "MD1";
    private const string FirstInstrument = "AN1";

    /// <summary>The protocol, the code and the rest.</summary>
    /// <exception cref="UsageException">An option will not do, or is missing and nobody can be asked.</exception>
    public static (ReadyProtocol Protocol, string Code, NewStudy Study) Of(
        StartOptions options,
        Questions questions,
        TimeProvider clock
    )
    {
        var all = ReadyProtocol.All();
        if (options.Protocol is null && questions.CanAsk)
        {
            questions.Say("Ready protocols:");
            foreach (var item in all)
            {
                questions.Say(item.Name, "  ");
            }

            questions.Say("What each asks: stability-study protocols");
        }

        var protocol = questions.Of(
            options.Protocol,
            "--protocol",
            "Which of them",
            proposed: null,
            name =>
                options.Protocol is not null || all.Any(item => item.Name == name)
                    ? null
                    : $"There is no ready protocol \"{name}\"."
        );
        if (protocol.Length == 0)
        {
            questions.RequireAnswers();
        }

        var ready = ReadyProtocol.Find(protocol);
        var code = questions.Of(
            options.Code,
            "--code",
            "Study code, printed on every page",
            CodeOf(options.Folder),
            ProblemOfCode
        );
        var title = Text(options.Title, "--title", "Title", ready.Question, NewStudy.LongestTitle);
        // Asked on request only: the protocol's own question is nearly always the right one.
        var question = options.Question is null
            ? ready.Question
            : Text(
                options.Question,
                "--question",
                "Question",
                ready.Question,
                NewStudy.LongestQuestion
            );
        var facility = Text(
            options.Facility,
            "--facility",
            "Laboratory, as the report names it",
            null,
            NewStudy.LongestTitle
        );
        var zone = questions.Of(
            options.TimeZone,
            "--time-zone",
            $"Time zone of your files, or {NoZone} when each time has its offset",
            clock.LocalTimeZone is { HasIanaId: true } here ? here.Id : null,
            ProblemOfZone,
            isAssumed: false
        );
        var people = People(options, questions);
        var instruments = Instruments(options, questions);
        var lots = Lots(options, questions, ready.AnalyteCodes());
        questions.RequireAnswers();
        return (
            ready,
            code,
            new NewStudy(
                ready.Name,
                title,
                facility,
                question,
                zone == NoZone ? null : zone,
                people,
                instruments,
                lots,
                options.Invented
            )
        );

        string Text(string? given, string option, string asked, string? proposed, int longest) =>
            questions.Of(
                TextOption.OneLine(given, option),
                option,
                asked,
                proposed,
                text => ProblemOfText(text, longest)
            );
    }

    private static ImmutableArray<Person> People(StartOptions options, Questions questions)
    {
        if (!options.People.IsEmpty)
        {
            return [.. options.People.Select(CodedOption.PersonOf)];
        }

        const string Option = "--person";
        if (!questions.CanAsk)
        {
            _ = questions.Of(null, Option, "", null, _ => null);
            return [];
        }

        var author = Ask("Who runs the study");
        var approver = Ask("Who decides on it, such as the medical director");
        return
        [
            new Person(Author, author, "lab scientist"),
            new Person(Approver, approver, "medical director"),
        ];

        string Ask(string question) =>
            questions.Of(
                null,
                Option,
                question,
                null,
                text => ProblemOfText(text, NewStudy.LongestTitle)
            );
    }

    private static ImmutableArray<Instrument> Instruments(StartOptions options, Questions questions)
    {
        if (!options.Instruments.IsEmpty || !questions.CanAsk)
        {
            return [.. options.Instruments.Select(CodedOption.InstrumentOf)];
        }

        var name = questions.Of(
            null,
            "--instrument",
            "Analyzer, as the report names it (empty: named later)",
            "",
            text => ProblemOfText(text, NewStudy.LongestTitle)
        );
        return name.Length == 0 ? [] : [new Instrument(FirstInstrument, name)];
    }

    /// <summary>The lots that are given, each of an analyte of the protocol.</summary>
    internal static ImmutableArray<Lot> GivenLots(
        StartOptions options,
        ImmutableArray<string> analytes
    )
    {
        var given = options.Lots.Select(CodedOption.LotOf).ToImmutableArray();
        return given.FirstOrDefault(lot => !analytes.Contains(lot.Analyte)) is { } other
            ? throw new UsageException(
                $"--lot: the protocol has no analyte \"{other.Analyte}\". It has {string.Join(", ", analytes)}."
            )
            : given;
    }

    private static ImmutableArray<Lot> Lots(
        StartOptions options,
        Questions questions,
        ImmutableArray<string> analytes
    )
    {
        if (!options.Lots.IsEmpty || !questions.CanAsk)
        {
            return GivenLots(options, analytes);
        }

        return
        [
            .. analytes
                .Select(analyte =>
                    (
                        Analyte: analyte,
                        Code: questions.Of(
                            null,
                            "--lot",
                            $"Reagent lot of {analyte} (empty: named later)",
                            "",
                            text => ProblemOfText(text, NewStudy.LongestTitle)
                        )
                    )
                )
                .Where(item => item.Code.Length > 0)
                .Select(item => new Lot(item.Code, "reagent", item.Analyte, null)),
        ];
    }

    internal static string? ProblemOfText(string text, int longest) =>
        UnseenCharacters.First(text) is not null ? "It holds a character that cannot be seen."
        : text.Length > longest
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"It has {text.Length} characters; there is room for {longest}."
            )
        : null;

    internal static string? ProblemOfCode(string code) =>
        code.Length is > 0 and <= LongestCode && !code.StartsWith('.') && code.All(IsOfCode)
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"A code has letters, digits, hyphen, underscore and point, at most {LongestCode} of them, and no point in front."
            );

    internal static string? ProblemOfZone(string zone) =>
        zone == NoZone
        || (
            TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found)
            && found.HasIanaId
            && found.Id == zone
        )
            ? null
            : $"\"{zone}\" is not in the IANA time zone database. Write a name such as Europe/Berlin or America/Chicago, or {NoZone}.";

    private static bool IsOfCode(char c) => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.';

    /// <summary>The code that the name of the folder proposes: "aptt-2026" gives "APTT-2026".</summary>
    private static string? CodeOf(string folder)
    {
        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)));
        var code = string.Concat(
                name.Select(c => IsOfCode(c) ? char.ToUpperInvariant(c) : '-').Take(LongestCode)
            )
            .TrimStart('.');
        return code.Any(char.IsAsciiLetterOrDigit) ? code : null;
    }
}
