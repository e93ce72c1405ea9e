using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Layouts;

namespace StabilityStudy.Files.Suggestions;

/// <summary>The files of a folder, and what study.toml says of them already.</summary>
/// <param name="files">The files.</param>
/// <param name="read">The table "read" of study.toml; null where there is none.</param>
internal sealed class DescribedFiles(StudyBytes files, TomlEntries? read)
{
    private readonly DataFileSet _data = StudyReading.DataFilesOf(files);

    /// <summary>A file with rows that is read now, and would not be any more, is nothing to replace unseen.</summary>
    public void AskAboutOther(SectionDraft draft)
    {
        var now = draft.Kind.Now(_data);
        if (
            now.AllStored.FirstOrDefault(name => !draft.Files.Contains(name) && HasRows(name)) is
            { } name
        )
        {
            draft.FileQuestion = draft.Ask(
                $"{name} holds {draft.Section} that are read now. Is {draft.Table.File} to be read in its place? Then uncomment file; to read both, they must have one form.",
                couldChangeNumbers: true
            );
        }
    }

    /// <summary>The table of [read] that describes a file already; null where none does.</summary>
    public KindOfTable? KindOf(string name)
    {
        return read is null ? null
            : _data.Pairs is { } pairs && Describes(KindOfTable.Pairs, pairs) ? KindOfTable.Pairs
            : Describes(KindOfTable.Specimens, _data.Specimens) ? KindOfTable.Specimens
            : Describes(KindOfTable.Results, _data.Results) ? KindOfTable.Results
            : Describes(KindOfTable.Controls, _data.Controls) ? KindOfTable.Controls
            : null;

        bool Describes(KindOfTable kind, DataFile file) =>
            file.AllStored.Contains(name) && read.Entries.Any(entry => entry.Key == kind.Section);
    }

    /// <summary>What study.toml states of a file.</summary>
    public StatedLayout Stated(string name) =>
        new(
            KindOf(name) is { } kind
                ? read?.Entries.FirstOrDefault(entry => entry.Key == kind.Section)?.Value
                    as TomlEntries
                : null
        );

    private bool HasRows(string name) =>
        files.Files.TryGetValue(name, out var bytes)
        && (Tables.Workbook.IsName(name) || bytes.Span.TrimEnd("\r\n"u8).IndexOf((byte)'\n') >= 0);
}
