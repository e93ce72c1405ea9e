using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>A document whose pages are drawn from what is attached to it: a protocol document or a notice.</summary>
internal interface IDrawnDocument
{
    /// <summary>What is signed.</summary>
    SignedSubject Subject { get; }

    /// <summary>What else is shown when it is drawn again, as the end of a sentence; empty for nothing.</summary>
    string AlsoDrawn { get; }

    /// <summary>Whether this version draws the same document, byte for byte.</summary>
    bool IsDrawnAgain();
}
