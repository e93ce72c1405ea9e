using System.Runtime.InteropServices;

namespace StabilityStudy.SignedPdf.Reading;

internal enum CrossReferenceKind
{
    Free,
    InFile,
    InObjectStream,
}

/// <summary>Where an object lies (ISO 32000-1:2008, 7.5.4 and 7.5.8.3).</summary>
/// <param name="Kind">Nowhere, in the file, or in an object stream.</param>
/// <param name="Place">Offset in the file, or number of the object stream.</param>
/// <param name="Detail">Generation, or index within the object stream.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CrossReferenceEntry(CrossReferenceKind Kind, int Place, int Detail);
