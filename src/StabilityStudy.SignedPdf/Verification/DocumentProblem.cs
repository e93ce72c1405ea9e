namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What is wrong with a signed document as a whole.</summary>
public enum DocumentProblem
{
    /// <summary>The file cannot be read; nothing else was looked at.</summary>
    Unreadable,

    /// <summary>There are bytes after the end of the last revision. The document before them was looked at.</summary>
    BytesAfterEnd,

    /// <summary>The form has another structure than the standard says.</summary>
    FormMalformed,

    /// <summary>Two fields have the same name, or share one signature.</summary>
    FieldNotUnique,

    /// <summary>There is a signature that belongs to no field.</summary>
    SignatureWithoutField,

    /// <summary>No signature covers the file to its end.</summary>
    LastRevisionNotSigned,

    /// <summary>A revision after the first was not made by signing.</summary>
    RevisionNotSigned,

    /// <summary>Two signatures cover the same revision.</summary>
    RevisionSignedTwice,

    /// <summary>An appended revision has another form than signing gives it, so that readers may take it differently.</summary>
    RevisionNotInForm,

    /// <summary>Something kept in the document to judge its signatures later is no certificate and no list of revoked ones.</summary>
    ValidationDataMalformed,

    /// <summary>The first signature does not certify, or the catalog does not name it as the one that does.</summary>
    CertificationMissing,
}
