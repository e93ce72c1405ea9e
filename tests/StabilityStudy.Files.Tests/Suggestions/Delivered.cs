using System.Globalization;
using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Suggestions;
using StabilityStudy.Files.Tests.OwnTables;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>Delivered files of the invented results, and what is suggested for them.</summary>
internal static class Delivered
{
    /// <summary>Days of these results are above 12, so that none can be taken for a month.</summary>
    public static readonly IReadOnlyList<DeliveredData.Test> Tests = DeliveredData.Shifted(11);

    public static readonly StudyBytes Plain = DeliveredData.PlainOf(Tests);

    private static readonly DateTimeOffset s_asOf = new(
        2026,
        3,
        27,
        12,
        0,
        0,
        TimeSpan.FromHours(1)
    );

    /// <summary>A study with a file in place of the results.</summary>
    public static StudyBytes With(string name, ReadOnlyMemory<byte> bytes) =>
        new StudyBytes(Plain.Files.Remove("results.csv")).With(name, bytes);

    /// <summary>The same of text.</summary>
    public static StudyBytes With(string header, Func<DeliveredData.Test, string> row) =>
        With("export.csv", GoodStudy.Utf8(Text(header, row)));

    public static string Text(string header, Func<DeliveredData.Test, string> row) =>
        header + "\n" + string.Concat(Tests.Select(test => row(test) + "\n"));

    public static string Time(DeliveredData.Test test, string form) =>
        test.Tested.ToString(form, CultureInfo.InvariantCulture);

    /// <summary>What is suggested.</summary>
    public static StudySuggestion Suggest(StudyBytes files)
    {
        Assert.True(StudySuggestion.Of(files, s_asOf).TryGet(out var suggestion));
        return suggestion;
    }

    /// <summary>The study with what is suggested, and with each answer that a person takes the comment sign from.</summary>
    public static StudyBytes Written(StudyBytes files, params ReadOnlySpan<string> answers)
    {
        var written = Suggest(files).WrittenInto(files.Files["study.toml"]);
        Assert.NotNull(written);
        var text = Encoding.UTF8.GetString(written.Value.Span);
        foreach (var answer in answers)
        {
            Assert.Contains("# " + answer, text, StringComparison.Ordinal);
            text = text.Replace("# " + answer, answer, StringComparison.Ordinal);
        }

        return files.With("study.toml", GoodStudy.Utf8(text));
    }

    /// <summary>The canonical results without the lines on which they stood.</summary>
    public static string Results(StudyIntakeResult study) => WithoutLines(study, "results.csv");

    /// <summary>The canonical rows of a kind without the lines on which they stood.</summary>
    public static string WithoutLines(StudyIntakeResult study, string file) =>
        string.Join(
            '\n',
            Encoding
                .UTF8.GetString(study.Canonical.Data.First(item => item.Name == file).Bytes.Span)
                .Split('\n')
                .Select(line => line[..Math.Max(0, line.LastIndexOf(','))])
        );

    /// <summary>Expects the plain results.</summary>
    public static void RequireSame(StudyBytes files) =>
        Assert.Equal(Results(CanonicalTests.Read(Plain)), Results(CanonicalTests.Read(files)));

    /// <summary>Expects that check stops.</summary>
    public static void RequireStop(StudyBytes files) =>
        Assert.False(StudyIntake.Read(files).TryGet(out _));
}
