using System.Reflection;

namespace StabilityStudy.Pipeline;

/// <summary>The version of the program, as the report prints it.</summary>
public static class ToolVersion
{
    /// <summary>The version from the build, for example "0.1.0".</summary>
    public static string Current { get; } =
        typeof(ToolVersion)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()
            ?.InformationalVersion
        ?? "unknown";

    /// <summary>Program and version: "stability-study 0.1.0".</summary>
    public static string Named => "stability-study " + Current;
}
