using System.Xml.Linq;

namespace StabilityStudy.Reporting.Charts;

/// <summary>The namespace of drawings.</summary>
internal static class SvgNames
{
    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
}
