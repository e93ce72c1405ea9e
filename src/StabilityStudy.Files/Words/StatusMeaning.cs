namespace StabilityStudy.Files.Words;

/// <summary>What becomes of a result with a status.</summary>
internal enum StatusMeaning
{
    /// <summary>Nobody has said: a query.</summary>
    NotDeclared,

    /// <summary>It is a result.</summary>
    Result,

    /// <summary>The test gave no result.</summary>
    NoResult,

    /// <summary>The row is not read; another one follows it.</summary>
    LeftAside,
}
