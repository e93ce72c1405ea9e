namespace StabilityStudy.Statistics.Agreement;

/// <summary>How demanding goals from biological variation are. The zero member is the strictest.</summary>
public enum GoalGrade
{
    /// <summary>Half of the desirable goals.</summary>
    Optimum,

    /// <summary>The usual goals.</summary>
    Desirable,

    /// <summary>One and a half times the desirable goals.</summary>
    Minimum,
}

/// <summary>Goals for a method, from how results vary within and between healthy persons.</summary>
/// <param name="Grade">How demanding they are.</param>
/// <param name="ImprecisionPercent">Largest coefficient of variation, percent.</param>
/// <param name="BiasPercent">Largest bias, percent.</param>
/// <param name="TotalErrorPercent">Largest total error of one result, percent: 1.65 times the imprecision goal and the bias goal.</param>
public sealed record AnalyticalGoals(
    GoalGrade Grade,
    double ImprecisionPercent,
    double BiasPercent,
    double TotalErrorPercent
);

/// <summary>The change of a person's result beyond which it is more than noise.</summary>
/// <param name="RisePercent">Smallest rise, percent of the first result.</param>
/// <param name="FallPercent">Smallest fall, percent of the first result; below zero.</param>
public sealed record ReferenceChange(double RisePercent, double FallPercent);

/// <summary>
/// Goals and reference change values from biological variation: the within-person and between-person coefficients of variation CVI and CVG of healthy persons.
/// </summary>
/// <remarks>
/// Goals: imprecision f·CVI with f = 0.25, 0.50, 0.75, bias g·√(CVI² + CVG²) with g = 0.125, 0.250, 0.375 for optimum, desirable, minimum (Fraser, Hyltoft Petersen,
/// Libeer and Ricós, Ann Clin Biochem 34 (1997) 8–12); total error 1.65·imprecision + bias. Reference change: symmetric ±z·√2·√(CVA² + CVI²) (Harris and Yasaka, Clin Chem 29 (1983) 25–30);
/// lognormal exp(±z·√2·σ) − 1 with σ² = ln(1 + CVA² + CVI²) (Fokkema, Herrmann, Muskiet and Moecks, Clin Chem Lab Med 44 (2006) 602–603). All from memory; values checked against printed ones.
/// Assumptions: CVs of the same population, method and level as the use; that of patients is often larger.
/// </remarks>
public static class BiologicalVariation
{
    private const double OneSided95 = 1.65;

    /// <summary>The goals of a grade.</summary>
    /// <param name="withinCvPercent">CVI, percent, above zero.</param>
    /// <param name="betweenCvPercent">CVG, percent, above zero.</param>
    /// <param name="grade">How demanding.</param>
    /// <exception cref="ArgumentException">A CV is not above zero, or the grade is unknown.</exception>
    public static AnalyticalGoals Goals(
        double withinCvPercent,
        double betweenCvPercent,
        GoalGrade grade
    )
    {
        RequireCv(withinCvPercent, nameof(withinCvPercent));
        RequireCv(betweenCvPercent, nameof(betweenCvPercent));
        var times = grade switch
        {
            GoalGrade.Optimum => 0.5,
            GoalGrade.Desirable => 1,
            GoalGrade.Minimum => 1.5,
            _ => throw new ArgumentException("The grade is unknown.", nameof(grade)),
        };
        var imprecision = times * 0.5 * withinCvPercent;
        var bias =
            times
            * 0.25
            * Math.Sqrt(
                (withinCvPercent * withinCvPercent) + (betweenCvPercent * betweenCvPercent)
            );
        return new(grade, imprecision, bias, (OneSided95 * imprecision) + bias);
    }

    /// <summary>The symmetric reference change value.</summary>
    /// <param name="analyticalCvPercent">CVA, percent, zero or above.</param>
    /// <param name="withinCvPercent">CVI, percent, above zero.</param>
    /// <param name="z">Normal quantile of the wanted certainty, above zero: 1.96 two-sided, 1.645 one-sided for 95 %.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ReferenceChange SymmetricChange(
        double analyticalCvPercent,
        double withinCvPercent,
        double z
    )
    {
        var reach = 100 * z * Math.Sqrt(2 * TotalVariance(analyticalCvPercent, withinCvPercent, z));
        return new(reach, -reach);
    }

    /// <summary>The lognormal reference change value: its fall is the reverse of its rise.</summary>
    /// <param name="analyticalCvPercent">CVA, percent, zero or above.</param>
    /// <param name="withinCvPercent">CVI, percent, above zero.</param>
    /// <param name="z">Normal quantile of the wanted certainty, above zero.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ReferenceChange LognormalChange(
        double analyticalCvPercent,
        double withinCvPercent,
        double z
    )
    {
        var reach =
            z * Math.Sqrt(2 * double.LogP1(TotalVariance(analyticalCvPercent, withinCvPercent, z)));
        return new(100 * double.ExpM1(reach), 100 * double.ExpM1(-reach));
    }

    private static double TotalVariance(double analytical, double within, double z)
    {
        if (!(analytical >= 0 && double.IsFinite(analytical)))
        {
            throw new ArgumentException(
                "A coefficient of variation is finite and not negative.",
                nameof(analytical)
            );
        }

        RequireCv(within, nameof(within));
        if (!(z > 0 && double.IsFinite(z)))
        {
            throw new ArgumentException("The quantile is above zero.", nameof(z));
        }

        return ((analytical * analytical) + (within * within)) / 10_000;
    }

    private static void RequireCv(double percent, string name)
    {
        if (!(percent > 0 && double.IsFinite(percent)))
        {
            throw new ArgumentException(
                "A coefficient of variation is finite and above zero.",
                name
            );
        }
    }
}
