using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.Messages;
using StabilityStudy.Files.Tests.OwnTables;
using StabilityStudy.Files.Tests.OwnTables.Shapes;
using StabilityStudy.Files.Tests.Suggestions;

namespace StabilityStudy.Files.Tests;

/// <summary>A file as laboratories deliver it, and what must become of it.</summary>
/// <param name="Kind">Where it is tried: what else is asked of it stands there.</param>
/// <param name="Name">What is awkward about it.</param>
/// <param name="Files">The study with it.</param>
/// <param name="Becomes">"the plain data", "query" with its code, or "question" with words of it.</param>
internal sealed record AwkwardFile(string Kind, string Name, StudyBytes Files, string Becomes);

/// <summary>
/// Every awkward file of these tests in one list. The files themselves are made where they are tried, and stand there with their expected reading, query or question:
/// shapes and dialects, what could be misread, messages, tables and settings with a fault, and what a person is asked about.
/// </summary>
internal static class AwkwardFiles
{
    public const string PlainData = "the plain data";

    public static ImmutableArray<AwkwardFile> All { get; } =
    [.. Shaped, .. Misread, .. Broken, .. AskedAbout];

    private static IEnumerable<AwkwardFile> Shaped
    {
        get
        {
            var data = ShapedData.Of(1);
            return
            [
                .. from shape in Shape.All(data)
                from dialect in Dialect.All
                select new AwkwardFile(
                    nameof(ShapeTests),
                    $"{shape.Name}: {dialect.Name}",
                    dialect.Of(shape, data),
                    PlainData
                ),
                .. Enumerable
                    .Range(1, 4)
                    .Select(seed => new AwkwardFile(
                        nameof(ShapeTests),
                        $"messages in the way of writing {seed}",
                        ShapeTests.AsMessages(data, seed),
                        PlainData
                    )),
            ];
        }
    }

    private static IEnumerable<AwkwardFile> Misread =>
        [
            .. MisreadingCases.All.Select(item => Of(nameof(MisreadingTests), item)),
            .. MessageCases.All.Select(item => Of(nameof(ResultMessageTests), item)),
        ];

    private static IEnumerable<AwkwardFile> Broken =>
        BrokenCsvCases.All.Select(item => new AwkwardFile(
            nameof(BrokenInputTests),
            item.ToString(),
            GoodStudy.Edited(item.File, item.From, item.To),
            "query " + item.Code
        ));

    private static IEnumerable<AwkwardFile> AskedAbout =>
        SuggestionQuestionTests.Doubtful.Select(row => new AwkwardFile(
            nameof(SuggestionQuestionTests),
            row.Data.Item1,
            row.Data.Item2,
            "question " + row.Data.Item3
        ));

    private static AwkwardFile Of(string kind, Misreading item) =>
        new(kind, item.Name, item.Files, "query " + item.Code);
}
