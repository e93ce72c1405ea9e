using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Lines of the laboratory's own files of results, which may be several.</summary>
internal static class SourceLines
{
    /// <summary>A line; of a further file with the number of the file: "2:17".</summary>
    public static string Words(int line) =>
        line > StudyFileNames.LinesOfFile
            ? $"{NumberText.Count(line / StudyFileNames.LinesOfFile + 1)}:{NumberText.Count(line % StudyFileNames.LinesOfFile)}"
            : NumberText.Count(line);

    /// <summary>Where further files are, for the words below a table; empty where there is one file.</summary>
    public static string Further(StudyAnalysis analysis) =>
        analysis.Facts.Files.MoreResults is { IsEmpty: false } more
            ? $", where those of further files are counted on from {NumberText.Count(StudyFileNames.LinesOfFile)} each; 2:17 is line 17 of the second of the files, and the further ones are {string.Join(", ", more)}"
            : "";
}
