using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Layouts;

/// <summary>Plain names of tables inside the study folder: .csv files, workbooks and files of messages.</summary>
internal static class PlainNames
{
    private const int LongestName = 120;
    private const string Extension = ".csv";

    /// <summary>The plain name of a data file.</summary>
    public static readonly ValueForm<string> Form = ValueForms.Text.When(
        FormattableString.Invariant(
            $"a name in the study folder that ends in {Extension}, {Workbook.Extension} or {MessageFile.Extension}, at most {LongestName} characters"
        ),
        (table, key, name) =>
            IsPlain(name)
            || table.Refuse(
                key,
                FileQueries.NotAPlainName,
                name,
                $"\"{name}\" is not the plain name of a .csv, .xlsx or .hl7 file in the study folder.",
                "Put the file into the study folder, with a name that ends in .csv, .xlsx or .hl7, and write that name only."
            )
    );

    /// <summary>Whether a name is that of a table in the study folder.</summary>
    public static bool IsTable(string name) =>
        HasExtension(name) && name.IndexOfAny(['/', '\\']) < 0;

    private static bool HasExtension(string name) =>
        name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase)
        || Workbook.IsName(name)
        || MessageFile.IsName(name);

    private static bool IsPlain(string name) =>
        name.Length <= LongestName
        && !name.StartsWith('.')
        && !name.EndsWith('.')
        && HasExtension(name)
        && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0;
}
