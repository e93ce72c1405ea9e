namespace StabilityStudy.SignedPdf.Attachments;

/// <summary>What an attached file is to the document (ISO 32000-2:2020, table 43, /AFRelationship).</summary>
public enum AttachmentRelationship
{
    /// <summary>Not said.</summary>
    Unspecified,

    /// <summary>The document was made from it.</summary>
    Source,

    /// <summary>Data shown in the document.</summary>
    Data,

    /// <summary>Adds to what the document says.</summary>
    Supplement,
}
