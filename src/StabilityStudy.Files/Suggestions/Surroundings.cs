using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Suggestions;

/// <summary>What is known of the study when a file is looked at.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Known">Codes that rows may refer to.</param>
/// <param name="Tubes">The tubes that can be read already.</param>
/// <param name="AsOf">The moment of the check, on the clock of the study.</param>
internal sealed record Surroundings(
    ProtocolDraft Protocol,
    KnownCodes Known,
    ImmutableArray<TubeRow> Tubes,
    DateTime AsOf
)
{
    private Dictionary<(string Specimen, string Tube), TubeRow>? _byKey;
    private Dictionary<string, TubeRow>? _bySpecimen;

    /// <summary>The analytes of the protocol.</summary>
    public ImmutableArray<Analyte> Analytes => Protocol.Analytes.Values;

    /// <summary>The planned delays.</summary>
    public ImmutableArray<TimePoint> TimePoints => Protocol.TimePoints;

    /// <summary>Baseline and planned delays.</summary>
    public IEnumerable<TestOccasion> Occasions =>
        TimePoints.Select(point => new TestOccasion(point)).Prepend(default);

    /// <summary>A tube; null for one that is not known.</summary>
    public TubeRow? Find(string specimen, string tube)
    {
        if (_byKey is null)
        {
            _byKey = [];
            foreach (var row in Tubes)
            {
                _byKey.TryAdd((row.Specimen, row.Tube), row);
            }
        }

        return _byKey.GetValueOrDefault((specimen, tube));
    }

    /// <summary>A tube of a specimen; null for a specimen that is not known.</summary>
    public TubeRow? Find(string specimen)
    {
        if (_bySpecimen is null)
        {
            _bySpecimen = [];
            foreach (var row in Tubes)
            {
                _bySpecimen.TryAdd(row.Specimen, row);
            }
        }

        return _bySpecimen.GetValueOrDefault(specimen);
    }

    /// <summary>Whether a delay is one of an occasion.</summary>
    public bool Fits(TestOccasion occasion, TimeSpan delay) =>
        occasion.TimePoint is { } point
            ? delay >= point.Delay - Protocol.Tolerance.Early
                && delay <= point.Delay + Protocol.Tolerance.LateAt(point)
            : delay >= TimeSpan.Zero && delay <= Protocol.BaselineWithin;
}
