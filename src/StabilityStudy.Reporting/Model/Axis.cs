namespace StabilityStudy.Reporting.Model;

/// <summary>An axis of a chart, with its ticks already worded.</summary>
internal sealed record Axis
{
    /// <summary>Creates an axis.</summary>
    /// <param name="label">What the axis shows, with its unit.</param>
    /// <param name="minimum">Value at the left or lower end.</param>
    /// <param name="maximum">Value at the right or upper end.</param>
    /// <param name="ticks">Ticks, each within the axis.</param>
    /// <exception cref="ArgumentException">The ends are not finite or not in order, or a tick is outside.</exception>
    public Axis(string label, double minimum, double maximum, ImmutableArray<Tick> ticks)
    {
        if (!double.IsFinite(minimum) || !double.IsFinite(maximum) || minimum >= maximum)
        {
            throw new ArgumentException(
                "The ends of an axis are finite and in order.",
                nameof(maximum)
            );
        }

        if (ticks.Any(t => !(t.Value >= minimum && t.Value <= maximum)))
        {
            throw new ArgumentException("Each tick lies within the axis.", nameof(ticks));
        }

        Label = label;
        Minimum = minimum;
        Maximum = maximum;
        Ticks = ticks;
    }

    /// <summary>What the axis shows, with its unit.</summary>
    public string Label { get; }

    /// <summary>Value at the left or lower end.</summary>
    public double Minimum { get; }

    /// <summary>Value at the right or upper end.</summary>
    public double Maximum { get; }

    /// <summary>Ticks in any order.</summary>
    public ImmutableArray<Tick> Ticks { get; }

    /// <summary>Whether the value lies on the axis, ends included.</summary>
    public bool Holds(double value) => value >= Minimum && value <= Maximum;
}

/// <summary>A tick with its finished label.</summary>
internal sealed record Tick(double Value, string Label);
