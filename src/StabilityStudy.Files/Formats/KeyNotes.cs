using System.Collections.Frozen;

namespace StabilityStudy.Files.Formats;

/// <summary>Finds what a key is for.</summary>
internal static class KeyNotes
{
    private static readonly FrozenDictionary<string, KeyNote> ByPath = FactsNotes
        .All.Concat(ProtocolNotes.All)
        .DistinctBy(note => note.Path)
        .ToFrozenDictionary(note => note.Path, StringComparer.Ordinal);

    /// <summary>"; write: code = "WB-RT-12"", or nothing for a key whose name is a code of the study.</summary>
    public static string Example(string path) =>
        ByPath.TryGetValue(path, out var note) ? $"; write: {note.Line}" : "";
}
