using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Agreement;

/// <summary>The two ends of an interval, in the unit of the quantity they enclose.</summary>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct IntervalBounds(double Lower, double Upper);
