using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Facts;

/// <summary>Reads the names of the data files: plain names of .csv files inside the study folder.</summary>
internal static class DataFileNames
{
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
}
