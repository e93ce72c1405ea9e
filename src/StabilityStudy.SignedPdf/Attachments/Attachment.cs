namespace StabilityStudy.SignedPdf.Attachments;

/// <summary>A file to be attached to a document.</summary>
public sealed record Attachment
{
    /// <summary>Creates an attachment.</summary>
    /// <param name="name">File name, without any folder.</param>
    /// <param name="mimeType">Kind of content, such as <c>text/csv</c>: two parts of ASCII letters, digits and <c>!#$&amp;-^_.+</c> (RFC 6838, section 4.2).</param>
    /// <param name="description">What the file is, for readers.</param>
    /// <param name="relationship">What the file is to the document.</param>
    /// <param name="bytes">The content; must not be changed afterwards.</param>
    /// <exception cref="ArgumentException">The name is empty, holds a control character or names a folder, or the kind has another form.</exception>
    public Attachment(
        string name,
        string mimeType,
        string description,
        AttachmentRelationship relationship,
        ReadOnlyMemory<byte> bytes
    )
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(mimeType);
        ArgumentNullException.ThrowIfNull(description);
        if (
            name is "." or ".."
            || name.Any(static character =>
                char.IsControl(character) || character is '/' or '\\' or ':'
            )
        )
        {
            throw new ArgumentException("A file name without a folder is needed.", nameof(name));
        }

        if (
            mimeType.Split('/') is not [var type, var subtype]
            || !IsToken(type)
            || !IsToken(subtype)
        )
        {
            throw new ArgumentException(
                "A kind of content such as text/csv is needed.",
                nameof(mimeType)
            );
        }

        if (!Enum.IsDefined(relationship))
        {
            throw new ArgumentException("No such relationship.", nameof(relationship));
        }

        Name = name;
        MimeType = mimeType;
        Description = description;
        Relationship = relationship;
        Bytes = bytes;
    }

    /// <summary>File name, without any folder.</summary>
    public string Name { get; }

    /// <summary>Kind of content, such as <c>text/csv</c>.</summary>
    public string MimeType { get; }

    /// <summary>What the file is, for readers.</summary>
    public string Description { get; }

    /// <summary>What the file is to the document.</summary>
    public AttachmentRelationship Relationship { get; }

    /// <summary>The content.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    private static bool IsToken(string text) =>
        text.Length > 0
        && text.All(static character =>
            char.IsAsciiLetterOrDigit(character)
            || "!#$&-^_.+".Contains(character, StringComparison.Ordinal)
        );
}
