using System.Reflection;

namespace StabilityStudy.Pipeline.Proving;

/// <summary>What the program carries in order to prove itself: published data and signed reports of earlier releases.</summary>
internal static class ProofResource
{
    private static Assembly Program => typeof(ProofResource).Assembly;

    /// <summary>The names in a folder of it, in the order of their bytes.</summary>
    public static ImmutableArray<string> In(string folder) =>
        [
            .. Program
                .GetManifestResourceNames()
                .Where(name => name.StartsWith(folder, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>One of them.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it: a defect.</exception>
    public static Stream Open(string name) =>
        Program.GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"The program does not carry {name}.");

    /// <summary>Its bytes.</summary>
    public static byte[] Bytes(string name)
    {
        using var stream = Open(name);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
