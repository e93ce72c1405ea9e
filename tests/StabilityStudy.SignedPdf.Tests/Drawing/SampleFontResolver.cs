using PdfSharp.Fonts;

namespace StabilityStudy.SignedPdf.Tests.Drawing;

/// <summary>Gives one font for every name, so that drawing needs no font of the machine.</summary>
internal sealed class SampleFontResolver : IFontResolver
{
    public byte[] GetFont(string faceName) => TestData.Read("sample-font.ttf");

    public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) =>
        new("Sample");
}
