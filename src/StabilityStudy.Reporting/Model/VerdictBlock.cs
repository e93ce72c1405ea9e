namespace StabilityStudy.Reporting.Model;

/// <summary>The conclusions of the report, each with a shape, a word and a sentence, so that color never carries a meaning.</summary>
internal sealed record VerdictBlock(ImmutableArray<VerdictLine> Lines) : Block;

/// <summary>One conclusion.</summary>
/// <param name="Shape">Shape drawn in front.</param>
/// <param name="Word">The conclusion in a word or two, for example "Supported to 12 h".</param>
/// <param name="Subject">To whom it applies, for example the patient group.</param>
/// <param name="Sentence">The conclusion in full.</param>
internal sealed record VerdictLine(
    VerdictShape Shape,
    string Word,
    string Subject,
    string Sentence
);

/// <summary>Shapes of the conclusions; they differ in outline and in filling, not only in color.</summary>
internal enum VerdictShape
{
    /// <summary>A rhombus, half filled.</summary>
    Inconclusive,

    /// <summary>An open circle with a dash.</summary>
    NotAssessed,

    /// <summary>An open triangle.</summary>
    NotReached,

    /// <summary>A filled square with a cross.</summary>
    NotSupported,

    /// <summary>A filled circle with a check mark.</summary>
    Supported,

    /// <summary>A filled triangle with an exclamation mark: supported, but for less than today's rule allows.</summary>
    ShorterThanToday,
}
