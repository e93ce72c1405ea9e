using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Pipeline.Protocols;

/// <summary>What came of drawing a protocol as a document.</summary>
public abstract record ProtocolDrawing
{
    private ProtocolDrawing() { }

    /// <summary>The document.</summary>
    /// <param name="Document">Its bytes.</param>
    /// <param name="Amendment">What it amends; null for a protocol that amends nothing.</param>
    /// <param name="Queries">What the protocol leaves in doubt; none of them stops.</param>
    public sealed record Drawn(
        RenderedReport Document,
        ProtocolAmendment? Amendment,
        ImmutableArray<DataQuery> Queries
    ) : ProtocolDrawing;

    /// <summary>There can be no document now.</summary>
    /// <param name="Why">Why not, in words.</param>
    public sealed record Refused(string Why) : ProtocolDrawing;

    /// <summary>Queries stop it.</summary>
    public sealed record Stopped(ImmutableArray<DataQuery> Queries) : ProtocolDrawing;
}
