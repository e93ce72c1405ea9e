using StabilityStudy.Files.Intake;

namespace StabilityStudy.Benchmarks;

/// <summary>Study files in a folder.</summary>
internal static class StudyFiles
{
    public static StudyBytes Read(string folder) =>
        StudyBytes.Of(
            Directory
                .EnumerateFiles(folder)
                .Where(file => Path.GetExtension(file) is ".toml" or ".csv")
                .Select(file =>
                    KeyValuePair.Create(
                        Path.GetFileName(file),
                        (ReadOnlyMemory<byte>)File.ReadAllBytes(file)
                    )
                )
        );

    public static void Write(StudyBytes study, string folder)
    {
        foreach (var (name, bytes) in study.Files)
        {
            File.WriteAllBytes(Path.Combine(folder, name), bytes.Span);
        }
    }
}
