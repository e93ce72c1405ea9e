namespace StabilityStudy.SignedPdf.Objects;

/// <summary>
/// One object of a PDF file (ISO 32000-1:2008, 7.3). The kinds are sealed and immutable.
/// Records that hold arrays compare those by reference; compare serialized bytes where content decides.
/// </summary>
public abstract record PdfObject
{
    private protected PdfObject() { }
}
