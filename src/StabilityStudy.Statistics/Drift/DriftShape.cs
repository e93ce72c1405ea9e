namespace StabilityStudy.Statistics.Drift;

/// <summary>How change grows with time since collection, t in hours.</summary>
public enum DriftShape
{
    /// <summary>f(t) = t.</summary>
    Linear,

    /// <summary>f(t) = ln(1 + t / 1 h).</summary>
    Logarithmic,

    /// <summary>f(t) = t².</summary>
    Quadratic,
}
