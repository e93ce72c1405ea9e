namespace ExampleStudies.Generator.Routine;

/// <summary>What goes wrong, put in on purpose at fixed places: each is described in the README of the example.</summary>
internal static class RoutineImperfections
{
    private const string ClottedTube = "N-014-C";
    private const string ShortTube = "H-009-B";
    private const string WarmedTube = "N-022-F";
    private const string OutOfControlRun = "2026-04-21-24H";
    private const int ShortFillPercent = 80;

    /// <summary>Too much citrate for the blood in a short tube prolongs the PT (size invented).</summary>
    private const double ShortFillFactor = 1.04;

    /// <summary>Heat destroys fibrinogen and prolongs the PT; one factor serves for all (size invented).</summary>
    private const double WarmedFactor = 0.90;

    /// <summary>A control that was left open on the bench (size invented).</summary>
    private const double OutOfControlFactor = 0.82;

    /// <summary>The tube as it really was.</summary>
    public static RoutineTube Disturb(RoutineTube tube) =>
        tube.Code switch
        {
            ClottedTube => tube with { Clotted = true },
            ShortTube => tube with { FillPercent = ShortFillPercent },
            _ => tube,
        };

    /// <summary>The factor by which what went wrong changes a result of the tube.</summary>
    public static double FactorOf(RoutineTube tube) =>
        tube.Code switch
        {
            ShortTube => ShortFillFactor,
            WarmedTube => WarmedFactor,
            _ => 1,
        };

    /// <summary>The factor by which what went wrong changes a control result.</summary>
    public static double FactorOf(ControlRun run, ControlMaterial material) =>
        (run.Code, material.Analyte, material.Code) == (OutOfControlRun, "FBG", "QC-1")
            ? OutOfControlFactor
            : 1;

    /// <summary>What the operator wrote beside the result.</summary>
    public static string RemarkOn(RoutineTube tube) =>
        tube.Code switch
        {
            ClottedTube => "no result: clot seen when the tube was opened",
            ShortTube => "short fill",
            WarmedTube => "rack stood beside the incubator overnight",
            _ => "",
        };
}
