using StabilityStudy.Core.Study;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads the names of the data files: plain names of .csv files inside the study folder.</summary>
internal static class DataFileNames
{
    private const int LongestName = 120;

    private const string Extension = ".csv";

    public static StudyFileNames Read(TomlTable? table)
    {
        if (table is null)
        {
            return StudyFileNames.Usual;
        }

        var names = new StudyFileNames(
            Specimens: ReadName(table, "specimens") ?? StudyFileNames.Usual.Specimens,
            Results: ReadName(table, "results") ?? StudyFileNames.Usual.Results
        )
        {
            Controls = ReadName(table, "controls") ?? StudyFileNames.Usual.Controls,
        };
        RequireOther(table, "results", names.Results, [names.Specimens]);
        RequireOther(table, "controls", names.Controls, [names.Specimens, names.Results]);
        return names;
    }

    private static void RequireOther(
        TomlTable table,
        string key,
        string name,
        ReadOnlySpan<string> others
    )
    {
        foreach (var other in others)
        {
            if (string.Equals(name, other, StringComparison.OrdinalIgnoreCase))
            {
                table.Remark(
                    key,
                    ProtocolQueries.DuplicateId,
                    name,
                    $"\"{name}\" holds other data already.",
                    "Name two files."
                );
            }
        }
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
            $"\"{name}\" is not the plain name of a .csv file in the study folder.",
            "Put the file into the study folder, with a name that ends in .csv, and write that name only."
        );
        return null;
    }

    private static bool IsPlain(string name) =>
        name.Length <= LongestName
        && !name.StartsWith('.')
        && !name.EndsWith('.')
        && name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase)
        && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0;
}
