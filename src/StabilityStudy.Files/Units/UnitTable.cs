namespace StabilityStudy.Files.Units;

/// <summary>
/// The units of coagulation results. Names follow the Unified Code for Units of Measure (UCUM); spellings are common practice.
/// D-dimer in fibrinogen equivalent units and in D-dimer units differ by a factor that depends on the method, so that nothing here
/// converts one into the other, and a mass without either is neither.
/// </summary>
internal static class UnitTable
{
    private static readonly ImmutableArray<(
        string Prefix,
        decimal Size,
        ImmutableArray<string> Also
    )> Masses =
    [
        ("ng/mL", 1, ["µg/L", "μg/L", "ug/L", "mcg/L", "ng/ml", "µg/l", "ug/l"]),
        ("ng/dL", 0.01m, ["ng/dl"]),
        ("ug/dL", 10, ["µg/dL", "μg/dL", "mcg/dL"]),
        ("mg/L", 1000, ["µg/mL", "μg/mL", "ug/mL", "mcg/mL", "mg/l", "ug/ml", "µg/ml"]),
        ("mg/dL", 10_000, ["mg/dl", "mg%"]),
        ("g/L", 1_000_000, ["mg/mL", "g/l", "mg/ml"]),
        ("g/dL", 10_000_000, ["g/dl"]),
    ];

    /// <summary>Every unit.</summary>
    public static ImmutableArray<UnitOfQuantity> All { get; } =
    [
        new("ms", QuantityKind.Time, 1, ["msec", "msecs", "millisec"]),
        new(
            "s",
            QuantityKind.Time,
            1000,
            ["sec", "secs", "sec.", "second", "seconds", "Sek", "Sek.", "sek", "S", "SEC"]
        ),
        new("min", QuantityKind.Time, 60_000, ["minute", "minutes", "mins", "Min"]),
        new("h", QuantityKind.Time, 3_600_000, ["hour", "hours", "hr", "hrs"]),
        new("{INR}", QuantityKind.NormalizedRatio, 1, ["INR", "inr"]),
        new("{ratio}", QuantityKind.Ratio, 1, ["ratio", "Ratio", "{Ratio}"]),
        new(
            "%",
            QuantityKind.Percent,
            1,
            ["percent", "pct", "% of normal", "% activity", "%{activity}"]
        ),
        .. Of(QuantityKind.MassConcentration, "", []),
        .. Of(QuantityKind.FibrinogenEquivalent, "{FEU}", [" FEU", "FEU", " (FEU)"]),
        .. Of(QuantityKind.DDimerUnits, "{DDU}", [" DDU", "DDU", " (DDU)", " D-DU"]),
        .. OfActivity("[IU]", QuantityKind.InternationalActivity, ["IU", "[iU]", "iU"]),
        .. OfActivity("U", QuantityKind.ArbitraryActivity, ["[U]", "[arb'U]"]),
    ];

    /// <summary>The unit of a name or spelling; null for one that is not in the table.</summary>
    public static UnitOfQuantity? Find(string text) =>
        All.FirstOrDefault(unit => unit.Name == text)
        ?? All.FirstOrDefault(unit => unit.Spellings.Contains(text));

    private static IEnumerable<UnitOfQuantity> Of(
        QuantityKind kind,
        string suffix,
        ImmutableArray<string> suffixes
    ) =>
        Masses.Select(mass => new UnitOfQuantity(
            mass.Prefix + suffix,
            kind,
            mass.Size,
            [
                .. from name in mass.Also.Prepend(mass.Prefix)
                from end in suffixes.Prepend(suffix)
                let spelling = name + end
                where spelling != mass.Prefix + suffix
                select spelling,
            ]
        ));

    private static IEnumerable<UnitOfQuantity> OfActivity(
        string name,
        QuantityKind kind,
        ImmutableArray<string> also
    ) =>
        new (string Before, string Volume, decimal Size)[]
        {
            ("m", "/mL", 0.001m),
            ("", "/L", 0.001m),
            ("", "/dL", 0.01m),
            ("", "/mL", 1),
            ("k", "/L", 1),
        }.Select(form => new UnitOfQuantity(
            form.Before + name + form.Volume,
            kind,
            form.Size,
            [
                .. from unit in also.Prepend(name)
                from volume in new[] { form.Volume, form.Volume.Replace('L', 'l') }
                let spelling = form.Before + unit + volume
                where spelling != form.Before + name + form.Volume
                select spelling,
            ]
        ));
}
