using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>A tube or portion with all that happened to it, and its test.</summary>
/// <param name="Specimen">The draw, as the worksheet prints it.</param>
/// <param name="Plan">The tube as the worksheet prints it.</param>
/// <param name="Storage">Where it waits; for a baseline the storage of the row in which it is written.</param>
/// <param name="Day">Day of collection, from 1.</param>
/// <param name="CollectedAt">Time of the draw.</param>
/// <param name="SpunAt">Time of spinning.</param>
/// <param name="SeparatedAt">When plasma was taken off; null for blood and plasma on cells.</param>
/// <param name="FrozenAt">When it was frozen; null where it is not.</param>
/// <param name="ThawedAt">When it was thawed.</param>
/// <param name="TestedAt">Time of the test.</param>
/// <param name="Run">Code of the run.</param>
internal sealed record InventedTube(
    BenchSpecimen Specimen,
    BenchTube Plan,
    Storage Storage,
    int Day,
    DateTimeOffset CollectedAt,
    DateTimeOffset SpunAt,
    DateTimeOffset? SeparatedAt,
    DateTimeOffset? FrozenAt,
    DateTimeOffset? ThawedAt,
    DateTimeOffset TestedAt,
    string Run
);
