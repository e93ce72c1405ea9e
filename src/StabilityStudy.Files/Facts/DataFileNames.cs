using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads the names of the data files: plain names of .csv files inside the study folder.</summary>
internal static class DataFileNames
{
    private const int LongestName = 120;

    private const string Extension = ".csv";

    /// <summary>The plain name of a data file.</summary>
    public static readonly ValueForm<string> PlainName = ValueForms.Text.When(
        FormattableString.Invariant(
            $"a name in the study folder that ends in {Extension}, at most {LongestName} characters"
        ),
        (table, key, name) =>
            IsPlain(name)
            || table.Refuse(
                key,
                FileQueries.NotAPlainName,
                name,
                $"\"{name}\" is not the plain name of a .csv file in the study folder.",
                "Put the file into the study folder, with a name that ends in .csv, and write that name only."
            )
    );

    public static StudyFileNames Read(TomlTable? table)
    {
        if (table is null)
        {
            return StudyFileNames.Usual;
        }

        var names = new StudyFileNames(
            Specimens: table.Read(FileNameKeys.Specimens),
            Results: table.Read(FileNameKeys.Results)
        )
        {
            Controls = table.Read(FileNameKeys.Controls),
        };
        RequireOther(table, FileNameKeys.Results, names.Results, [names.Specimens]);
        RequireOther(
            table,
            FileNameKeys.Controls,
            names.Controls,
            [names.Specimens, names.Results]
        );
        return names;
    }

    private static void RequireOther(
        TomlTable table,
        Key key,
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

    /// <summary>Whether a name is that of a table in the study folder.</summary>
    internal static bool IsTable(string name) =>
        name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase)
        && name.IndexOfAny(['/', '\\']) < 0;

    private static bool IsPlain(string name) =>
        name.Length <= LongestName
        && !name.StartsWith('.')
        && !name.EndsWith('.')
        && name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase)
        && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0;
}
