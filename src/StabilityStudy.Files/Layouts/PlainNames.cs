using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Layouts;

/// <summary>Plain names of tables inside the study folder: .csv files, workbooks and files of messages.</summary>
internal static class PlainNames
{
    private const int LongestName = 120;
    private const string Notes = ".txt";

    private static readonly ImmutableArray<string> s_extensions =
    [
        ".csv",
        Workbook.Extension,
        ".tsv",
        Notes,
        MessageFile.Extension,
    ];

    /// <summary>The plain name of a data file.</summary>
    public static readonly ValueForm<string> Form = ValueForms.Text.When(
        FormattableString.Invariant(
            $"a name in the study folder that ends in .csv, {Workbook.Extension}, .tsv, {Notes} or {MessageFile.Extension}, at most {LongestName} characters"
        ),
        (table, key, name) =>
            IsPlain(name)
            || table.Refuse(
                key,
                FileQueries.NotAPlainName,
                name,
                $"\"{name}\" is not the plain name of a .csv, .xlsx, .tsv, .txt or .hl7 file in the study folder.",
                "Put the file into the study folder, with a name that ends in .csv, .xlsx, .tsv, .txt or .hl7, and write that name only."
            )
    );

    /// <summary>Whether a name is that of a table in the study folder. A text file is one only where study.toml names it: most are notes.</summary>
    public static bool IsTable(string name) =>
        MayBeTable(name) && !name.EndsWith(Notes, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a name may be that of a table in the study folder, text files among them.</summary>
    public static bool MayBeTable(string name) =>
        HasExtension(name) && name.IndexOfAny(['/', '\\']) < 0;

    private static bool HasExtension(string name) =>
        s_extensions.Any(end => name.EndsWith(end, StringComparison.OrdinalIgnoreCase));

    private static bool IsPlain(string name) =>
        name.Length <= LongestName
        && !name.StartsWith('.')
        && !name.EndsWith('.')
        && HasExtension(name)
        && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0;
}
