namespace StabilityStudy.Files.Words;

/// <summary>Whether a key or column must be given.</summary>
internal enum Need
{
    /// <summary>It must be there.</summary>
    Required,

    /// <summary>It may be there.</summary>
    Optional,

    /// <summary>Its meaning says when it must be there.</summary>
    Depends,

    /// <summary>Required for the kinds of criterion that have it.</summary>
    OfSomeKinds,
}
