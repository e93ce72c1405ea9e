using System.Globalization;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Starting;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests.Bench;

/// <summary>Studies for which pages are printed: the examples, and a study just begun with a ready protocol.</summary>
internal static class BenchStudies
{
    public static string[] Examples { get; } =
    ["aptt-room-temperature", "frozen-plasma", "routine-room-temperature", "small-paired-sheet"];

    public static string[] ReadyProtocols { get; } =
    [
        .. Directory
            .GetFiles(Path.Combine(RepositoryFile.Root, "protocols"), "*.toml")
            .Select(file => Path.GetFileNameWithoutExtension(file))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>A study begun with a ready protocol, without a tube.</summary>
    public static StudyBytes Started(string protocol)
    {
        var outcome = StartedStudy.Of(
            File.ReadAllText(Path.Combine(RepositoryFile.Root, "protocols", protocol + ".toml")),
            "NEW-STUDY",
            new NewStudy(
                protocol,
                "Invented study",
                "Invented laboratory",
                "How long may it wait?",
                "America/New_York",
                [new("LS1", "Lab Scientist One", "lab scientist")],
                [],
                [],
                Invented: true
            )
        );
        Assert.True(outcome.TryGet(out var started));
        return StudyBytes.Of(
            started.Files.Select(file => KeyValuePair.Create(file.Name, file.Bytes))
        );
    }

    /// <summary>A study by the name of an example or of a ready protocol.</summary>
    public static StudyBytes Of(string name) =>
        Examples.Contains(name) ? ExampleStudy.OfFolder(name) : Started(name);

    public static BenchRequest Request(
        PaperSize paper = PaperSize.A4,
        params BenchPageKind[] kinds
    ) => new([.. kinds], 1, paper);

    /// <summary>So many specimens of the first group of a study.</summary>
    public static BenchRequest Of(this BenchRequest request, string group, int specimens) =>
        request with
        {
            Specimens =
            [
                string.Create(CultureInfo.InvariantCulture, $"{group}=N-001..N-{specimens:000}"),
            ],
        };

    public static BenchPagesAnswer.Ready Ready(StudyBytes files, BenchRequest request) =>
        Assert.IsType<BenchPagesAnswer.Ready>(BenchPages.Of(files, request));

    public static byte[] Pdf(StudyBytes files, BenchRequest request) =>
        BenchPages.Render(Ready(files, request)).Pdf.ToArray();
}
