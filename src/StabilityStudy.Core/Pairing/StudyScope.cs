using System.Collections.Frozen;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>Which instrument or site a specimen belongs to: that of its baseline, with which it entered the study.</summary>
internal sealed class StudyScope
{
    private readonly FrozenDictionary<string, string>? _sites;

    private StudyScope(ScopeKind kind, FrozenDictionary<string, string>? sites)
    {
        Kind = kind;
        _sites = sites;
    }

    /// <summary>What specimens are told apart by: sites where the protocol plans its numbers for sites, else instruments.</summary>
    public ScopeKind Kind { get; }

    public static StudyScope Of(PlannedPer per, StudyFacts facts) =>
        per == PlannedPer.Site
            ? new(
                ScopeKind.Site,
                facts.Instruments.ToFrozenDictionary(
                    instrument => instrument.Id,
                    instrument => instrument.Site ?? "",
                    StringComparer.Ordinal
                )
            )
            : new(ScopeKind.Instrument, null);

    /// <summary>The code of a specimen's instrument or site; empty where it is not recorded.</summary>
    public string CodeOf(PairRecord pair)
    {
        var instrument =
            new[] { pair.Baseline?.Instrument, pair.Delayed?.Instrument }.FirstOrDefault(code =>
                !string.IsNullOrEmpty(code)
            )
            ?? "";
        return _sites is null ? instrument : _sites.GetValueOrDefault(instrument, "");
    }

    /// <summary>The codes among the specimens with a valid baseline, in order.</summary>
    public ImmutableArray<string> CodesOf(IEnumerable<PairRecord> pairs) =>
        [
            .. pairs
                .Where(pair => pair.HasValidBaseline)
                .Select(CodeOf)
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
}
