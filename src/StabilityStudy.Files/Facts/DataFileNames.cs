using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads the names of the data files: plain names of .csv files inside the study folder.</summary>
internal static class DataFileNames
{
    private const int LongestName = 120;

    private const string Extension = ".csv";
    private const string OfWorkbooks = ".xlsx";

    /// <summary>The plain name of a data file.</summary>
    public static readonly ValueForm<string> PlainName = ValueForms.Text.When(
        FormattableString.Invariant(
            $"a name in the study folder that ends in {Extension} or {OfWorkbooks}, at most {LongestName} characters"
        ),
        (table, key, name) =>
            IsPlain(name)
            || table.Refuse(
                key,
                FileQueries.NotAPlainName,
                name,
                $"\"{name}\" is not the plain name of a .csv or .xlsx file in the study folder.",
                "Put the file into the study folder, with a name that ends in .csv or .xlsx, and write that name only."
            )
    );

    /// <summary>Reads the names.</summary>
    /// <param name="table">The table "files"; null where there is none.</param>
    /// <param name="isDescribed">Whether [read] describes a kind of file: two kinds may then stand in one file, in sheets or columns of their own.</param>
    public static StudyFileNames Read(TomlTable? table, Func<Key, bool> isDescribed)
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
        RequireOther(
            table,
            FileNameKeys.Results,
            names.Results,
            [(FileNameKeys.Specimens, names.Specimens)],
            isDescribed
        );
        RequireOther(
            table,
            FileNameKeys.Controls,
            names.Controls,
            [(FileNameKeys.Specimens, names.Specimens), (FileNameKeys.Results, names.Results)],
            isDescribed
        );
        return names;
    }

    private static void RequireOther(
        TomlTable table,
        Key key,
        string name,
        ReadOnlySpan<(Key Key, string Name)> others,
        Func<Key, bool> isDescribed
    )
    {
        foreach (var (otherKey, other) in others)
        {
            if (
                string.Equals(name, other, StringComparison.OrdinalIgnoreCase)
                && !(isDescribed(key) && isDescribed(otherKey))
            )
            {
                table.Remark(
                    key,
                    ProtocolQueries.DuplicateId,
                    name,
                    $"\"{name}\" holds other data already.",
                    "Name two files; where one file holds both, describe each of the two under [read]."
                );
            }
        }
    }

    /// <summary>Whether a name is that of a table in the study folder.</summary>
    internal static bool IsTable(string name) =>
        HasExtension(name) && name.IndexOfAny(['/', '\\']) < 0;

    private static bool HasExtension(string name) =>
        name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(OfWorkbooks, StringComparison.OrdinalIgnoreCase);

    private static bool IsPlain(string name) =>
        name.Length <= LongestName
        && !name.StartsWith('.')
        && !name.EndsWith('.')
        && HasExtension(name)
        && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0;
}
