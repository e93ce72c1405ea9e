namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Which part of a document an object belongs to.</summary>
public enum DocumentPart
{
    /// <summary>None that can be reached from the catalog.</summary>
    Unreachable,

    /// <summary>The trailer.</summary>
    Trailer,

    /// <summary>The document catalog.</summary>
    Catalog,

    /// <summary>What the document says about itself.</summary>
    Metadata,

    /// <summary>The attached files.</summary>
    Attachments,

    /// <summary>The form with its fields, signatures and stamps.</summary>
    Form,

    /// <summary>The pages with what they show.</summary>
    Pages,

    /// <summary>Anything else: tags, outline and so on.</summary>
    Other,
}
