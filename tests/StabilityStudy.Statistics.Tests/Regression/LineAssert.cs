using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>Compares coefficients with reference values.</summary>
internal static class LineAssert
{
    public static void Agrees(
        Dictionary<string, double> expected,
        string quantity,
        CoefficientInterval actual
    )
    {
        RegressionReference.Close(expected[quantity], actual.Value);
        RegressionReference.Close(expected[quantity + "_se"], actual.StandardError);
        RegressionReference.Close(expected[quantity + "_lower"], actual.Lower);
        RegressionReference.Close(expected[quantity + "_upper"], actual.Upper);
    }
}
