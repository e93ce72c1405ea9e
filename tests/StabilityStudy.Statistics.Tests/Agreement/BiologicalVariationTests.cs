using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Statistics.Tests.Agreement;

/// <summary>Goals and reference change values against printed ones.</summary>
public static class BiologicalVariationTests
{
    /// <summary>Desirable bias and total error, computed by hand from coefficients of variation seen in print: PT, aPTT, fibrinogen.</summary>
    [Theory]
    [InlineData(3.2, 5.8, 1.656, 4.296)]
    [InlineData(5.8, 8.4, 2.552, 7.337)]
    [InlineData(11, 17.4, 5.146, 14.221)]
    public static void Desirable_bias_is_a_quarter_of_the_whole_variation(
        double within,
        double between,
        double bias,
        double totalError
    )
    {
        var desirable = BiologicalVariation.Goals(within, between, GoalGrade.Desirable);

        Close.Absolute(bias, desirable.BiasPercent, 0.0005);
        Close.Absolute(totalError, desirable.TotalErrorPercent, 0.0005);
        Close.Relative(within / 2, desirable.ImprecisionPercent, 1e-15);
        Close.Relative(
            (1.65 * within / 2) + desirable.BiasPercent,
            desirable.TotalErrorPercent,
            1e-15
        );
    }

    [Theory]
    [InlineData(GoalGrade.Optimum, 0.5)]
    [InlineData(GoalGrade.Minimum, 1.5)]
    public static void The_other_grades_are_half_and_one_and_a_half_times_that(
        GoalGrade grade,
        double times
    )
    {
        var desirable = BiologicalVariation.Goals(5.8, 8.4, GoalGrade.Desirable);
        var other = BiologicalVariation.Goals(5.8, 8.4, grade);

        Close.Relative(times * desirable.BiasPercent, other.BiasPercent, 1e-14);
        Close.Relative(times * desirable.ImprecisionPercent, other.ImprecisionPercent, 1e-14);
        Close.Relative(times * desirable.TotalErrorPercent, other.TotalErrorPercent, 1e-14);
    }

    /// <summary>Printed pairs of a 2023 paper on coagulation tests: PT with a total CV of 3.35 % at z = 1.645; a fall is the reverse of its rise.</summary>
    [Fact]
    public static void Lognormal_reference_change_is_that_of_print()
    {
        var change = BiologicalVariation.LognormalChange(0, 3.35, 1.645);

        Close.Absolute(8.1, change.RisePercent, 0.05);
        Close.Absolute(-7.5, change.FallPercent, 0.05);
        Close.Relative(
            100 * ((1 / (1 + (change.RisePercent / 100))) - 1),
            change.FallPercent,
            1e-12
        );
    }

    [Fact]
    public static void Small_variations_give_the_same_either_way()
    {
        var symmetric = BiologicalVariation.SymmetricChange(0.03, 0.04, 1.96);
        var lognormal = BiologicalVariation.LognormalChange(0.03, 0.04, 1.96);

        Close.Relative(1.96 * Math.Sqrt(2) * 0.05, symmetric.RisePercent, 1e-14);
        Close.Absolute(symmetric.RisePercent, lognormal.RisePercent, 2e-4);
        Close.Absolute(symmetric.FallPercent, lognormal.FallPercent, 2e-4);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public static void A_variation_that_is_not_above_zero_is_the_callers_mistake(double cv)
    {
        Assert.ThrowsAny<ArgumentException>(() => Goals(cv, 5));
        Assert.ThrowsAny<ArgumentException>(() => Goals(5, cv));
        Assert.ThrowsAny<ArgumentException>(() => Symmetric(1, cv, 1.96));
        Assert.ThrowsAny<ArgumentException>(() => Lognormal(1, cv, 1.96));
        Assert.ThrowsAny<ArgumentException>(() => Symmetric(1, 5, cv));
        Assert.ThrowsAny<ArgumentException>(() => Lognormal(1, 5, cv));

        static void Goals(double within, double between) =>
            BiologicalVariation.Goals(within, between, GoalGrade.Desirable);
        static void Symmetric(double analytical, double within, double z) =>
            BiologicalVariation.SymmetricChange(analytical, within, z);
        static void Lognormal(double analytical, double within, double z) =>
            BiologicalVariation.LognormalChange(analytical, within, z);
    }

    [Fact]
    public static void The_method_itself_may_have_no_variation_but_not_less()
    {
        // √2·z·CVI is left when the method is perfect.
        Close.Relative(
            1.96 * Math.Sqrt(2) * 5,
            BiologicalVariation.SymmetricChange(0, 5, 1.96).RisePercent,
            1e-14
        );
        Assert.ThrowsAny<ArgumentException>(() => BiologicalVariation.SymmetricChange(-1, 5, 1.96));
        Assert.ThrowsAny<ArgumentException>(() =>
            BiologicalVariation.SymmetricChange(double.NaN, 5, 1.96)
        );
    }

    [Fact]
    public static void An_unknown_grade_is_the_callers_mistake() =>
        Assert.Throws<ArgumentException>(
            "grade",
            () => BiologicalVariation.Goals(5, 5, (GoalGrade)7)
        );
}
