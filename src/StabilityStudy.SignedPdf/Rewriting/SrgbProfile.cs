namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// A profile of the sRGB color space, for the output intent of a file: three primaries, adapted from D65 to D50 by the Bradford
/// transform, and one curve (ICC.1:2001-04, version 2 of the format; IEC 61966-2-1:1999). The file is our own and free of copyright.
/// </summary>
internal static class SrgbProfile
{
    /// <summary>Name under which the color space is registered.</summary>
    public const string Identifier = "sRGB IEC61966-2.1";

    /// <summary>The bytes of the profile.</summary>
    public static byte[] Bytes()
    {
        using var file =
            typeof(SrgbProfile).Assembly.GetManifestResourceStream("sRGB.icc")
            ?? throw new InvalidOperationException("The color profile is not embedded.");
        var bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes;
    }
}
