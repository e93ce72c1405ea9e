namespace StabilityStudy.SignedPdf.Reading;

/// <summary>
/// Bounds on what a file may ask of its reader. They lie far above any report of this project
/// (tens of megabytes, thousands of objects) and keep a hostile file from exhausting memory, stack or time.
/// </summary>
internal static class ReadingLimits
{
    /// <summary>Longest file, bytes.</summary>
    public const int FileLength = 128 * 1024 * 1024;

    /// <summary>Deepest nesting of arrays and dictionaries within one object.</summary>
    public const int Depth = 64;

    /// <summary>Highest object number (ISO 32000-1:2008, Annex C).</summary>
    public const int ObjectNumber = 8_388_607;

    /// <summary>Most objects.</summary>
    public const int Objects = 1_000_000;

    /// <summary>Most revisions of one file.</summary>
    public const int Revisions = 64;

    /// <summary>Most decoded bytes of all object streams and cross-reference streams together.</summary>
    public const int StructureLength = 64 * 1024 * 1024;

    /// <summary>Most objects, those inside other objects included, that one reading makes.</summary>
    public const int Values = 2_000_000;

    /// <summary>Most decoded bytes of one content stream, and of all attached files together.</summary>
    public const int StreamLength = 128 * 1024 * 1024;

    /// <summary>Most references in a row from one reference to the object meant.</summary>
    public const int ReferenceHops = 16;
}
