namespace StabilityStudy.Statistics.Drift;

/// <summary>
/// How the change is taken to grow with time since collection, f(t), t in hours. The shape is declared beforehand: crossing times from
/// different shapes differ by 10–15 % and more.
/// </summary>
public enum DriftShape
{
    /// <summary>f(t) = t: the same change every hour.</summary>
    Linear,

    /// <summary>f(t) = ln(1 + t/1 h): fast at first, then slower. The hour is part of the shape; another unit is another curve.</summary>
    Logarithmic,

    /// <summary>f(t) = t²: slow at first, then faster.</summary>
    Quadratic,
}
