using System.Reflection;

namespace StabilityStudy.Statistics.Tests;

/// <summary>METHODS.md mirrors the code: every method class and every code stands in it.</summary>
public sealed class MethodsDocumentTests
{
    private static readonly string s_text = string.Concat(
        Directory.GetFiles(AppContext.BaseDirectory, "METHODS*.md").Select(File.ReadAllText)
    );

    [Fact]
    public void Every_method_class_stands_in_the_document()
    {
        var missing = typeof(ExactPairs)
            .Assembly.GetExportedTypes()
            .Where(type => type is { IsAbstract: true, IsSealed: true })
            .Where(type => type != typeof(Estimate) && type != typeof(AssumptionCode))
            .Where(type => type != typeof(LargestSample))
            .Select(type => type.Name)
            .Where(name => !s_text.Contains($"`{name}", StringComparison.Ordinal));

        Assert.Empty(missing);
    }

    [Fact]
    public void Every_assumption_code_stands_in_the_document()
    {
        var missing = typeof(AssumptionCode)
            .GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => (string)field.GetRawConstantValue()!)
            .Where(code => !s_text.Contains($"`{code}`", StringComparison.Ordinal));

        Assert.Empty(missing);
    }
}
