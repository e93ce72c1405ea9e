using StabilityStudy.Core.Study;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads the names of the data files: plain names inside the study folder.</summary>
internal static class DataFileNames
{
    private const int LongestName = 120;

    public static StudyFileNames Read(TomlTable? table)
    {
        if (table is null)
        {
            return StudyFileNames.Usual;
        }

        var names = new StudyFileNames(
            Specimens: ReadName(table, "specimens") ?? StudyFileNames.Usual.Specimens,
            Results: ReadName(table, "results") ?? StudyFileNames.Usual.Results
        );
        if (string.Equals(names.Specimens, names.Results, StringComparison.OrdinalIgnoreCase))
        {
            table.Remark(
                "results",
                ProtocolQueries.DuplicateId,
                names.Results,
                "Specimens and results are in the same file.",
                "Name two files."
            );
        }

        return names;
    }

    private static string? ReadName(TomlTable table, string key)
    {
        var name = table.OptionalText(key);
        if (name is null || IsPlain(name))
        {
            return name;
        }

        table.Fault(
            key,
            FileQueries.NotAPlainName,
            name,
            $"\"{name}\" is not the plain name of a file in the study folder.",
            "Put the file into the study folder and write its name only."
        );
        return null;
    }

    private static bool IsPlain(string name) =>
        name.Length <= LongestName
        && !name.StartsWith('.')
        && !name.EndsWith('.')
        && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0;
}
