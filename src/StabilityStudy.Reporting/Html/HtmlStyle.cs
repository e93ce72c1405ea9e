using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Html;

/// <summary>How the page looks: the fonts of the report, black on white, nothing that only color tells.</summary>
internal static class HtmlStyle
{
    private const string Rules = """
        :root { color-scheme: light; }
        * { box-sizing: border-box; }
        body { font: 16px/1.5 "Report Sans", sans-serif; color: #1a1c20; background: #fff; margin: 0 auto; max-width: 62rem; padding: 1.5rem; }
        h1, h2 { color: #1d4466; font-weight: 600; line-height: 1.25; }
        h1 { font-size: 1.9rem; margin: 0.4rem 0 1rem; }
        h2 { font-size: 1.35rem; margin: 2.6rem 0 0.8rem; }
        h3 { font-size: 1.05rem; font-weight: 600; margin: 1.6rem 0 0.5rem; }
        p { margin: 0 0 0.8rem; }
        body, th, td, dd { overflow-wrap: break-word; }
        .small, .note, .running { color: #4a4f57; font-size: 0.86rem; }
        .lead { font-size: 1.12rem; }
        .running { display: flex; justify-content: space-between; gap: 0 1rem; flex-wrap: wrap; border-bottom: 1px solid #8a939e; }
        nav ol { columns: 2 18rem; padding-left: 1.4rem; }
        a { color: #1d4466; }
        .wide { overflow-x: auto; margin: 0 0 1.2rem; }
        .wide:focus-visible, a:focus-visible { outline: 2px solid #1d4466; outline-offset: 2px; }
        table { border-collapse: collapse; width: 100%; font-size: 0.86rem; font-variant-numeric: tabular-nums; }
        caption { text-align: left; font-weight: 600; padding: 0.4rem 0; }
        th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.6rem 0.3rem 0; border-bottom: 1px solid #c5cad1; font-weight: 400; }
        thead th { font-weight: 600; border-bottom: 2px solid #1a1c20; }
        tbody tr { background: #fff; }
        tbody tr:target { background: #e8ebef; }
        tbody th[colspan] { font-weight: 600; padding-top: 0.7rem; }
        .right { text-align: right; }
        .center { text-align: center; }
        .muted { font-style: italic; color: #4a4f57; }
        .glyph { width: 1em; height: 1em; vertical-align: -0.12em; margin-right: 0.35em; }
        td:has(> .glyph) { white-space: nowrap; }
        .verdict { margin: 0 0 1rem; }
        .verdict .word { font-weight: 600; color: #1d4466; margin-right: 0.8em; }
        .strong { font-weight: 600; }
        .key { background: #e8ebef; padding: 0.6rem 0.8rem; }
        .decisions { border-top: 3px solid #1d4466; margin: 0 0 1.2rem; }
        .decision { display: grid; grid-template-columns: 12rem minmax(0, 1fr) 9rem; gap: 0.4rem 1.2rem; border-bottom: 1px solid #1a1c20; padding: 0.7rem 0; }
        .decision p { margin: 0 0 0.3rem; }
        .decision ol { margin: 0.4rem 0 0; padding-left: 1.4rem; }
        .answer { font-weight: 600; font-size: 1.1rem; }
        .now { border: 1px solid #1a1c20; padding: 0.4rem 0.6rem; }
        dl { display: grid; grid-template-columns: minmax(7rem, 14rem) minmax(0, 1fr); gap: 0.2rem 1rem; }
        dt { font-weight: 600; }
        dd { margin: 0; }
        pre { font: 0.78rem/1.45 "Report Mono", monospace; }
        figure { margin: 0 0 1.4rem; }
        figure svg { width: 100%; height: auto; display: block; }
        .row { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr)); gap: 1rem; }
        .boxes { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(18rem, 100%), 1fr)); gap: 1rem; }
        .box { border: 1px solid #1a1c20; padding: 0.6rem 0.8rem; }
        @media print { nav { display: none; } body { max-width: none; padding: 0; font-size: 10pt; } table, figure, .box { break-inside: avoid; } }
        @media (max-width: 48rem) {
          body { padding: 0.8rem; }
          h1 { font-size: 1.5rem; }
          dl, .decision { grid-template-columns: minmax(0, 1fr); }
          dd { margin-bottom: 0.5rem; }
          .claim, .decide { order: -1; }
          .stacked thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
          .stacked, .stacked tbody, .stacked tr, .stacked th, .stacked td, .stacked caption { display: block; max-width: none; }
          .stacked tr { border-bottom: 1px solid #c5cad1; padding: 0.4rem 0; }
          .stacked tbody th, .stacked tbody td { border: 0; padding: 0.1rem 0; text-align: left; white-space: normal; max-width: none; }
          .stacked td:empty { display: none; }
          .stacked tbody th { font-weight: 600; font-size: 1rem; }
          .stacked [data-head]::before { content: attr(data-head) ": "; font-weight: 400; font-style: normal; color: #4a4f57; }
          .wide table:not(.stacked) { width: max-content; min-width: 100%; }
          table:not(.stacked) th, table:not(.stacked) td { max-width: 14rem; }
          table:not(.stacked) tbody th { max-width: 9rem; }
          table:not(.stacked) tbody th:not([colspan]) { position: sticky; left: 0; background: inherit; }
          table:not(.stacked) tbody th[colspan], caption { max-width: 20rem; }
        }
        """;

    /// <summary>The style sheet with the fonts inside, so that the page needs nothing else.</summary>
    public static string Sheet { get; } =
        Faces(ReportFonts.Regular, ReportFonts.Sans, 400, "normal")
        + Faces(ReportFonts.Semibold, ReportFonts.Sans, 600, "normal")
        + Faces(ReportFonts.Italic, ReportFonts.Sans, 400, "italic")
        + Faces(ReportFonts.Fixed, ReportFonts.Mono, 400, "normal")
        + Rules;

    /// <summary>The two fonts that figures use.</summary>
    public static string FigureFonts { get; } =
        Faces(ReportFonts.Regular, ReportFonts.Sans, 400, "normal")
        + Faces(ReportFonts.Semibold, ReportFonts.Sans, 600, "normal");

    private static string Faces(FontFace face, string family, int weight, string style) =>
        FormattableString.Invariant(
            $"@font-face {{ font-family: \"{family}\"; font-weight: {weight}; font-style: {style}; src: url(data:font/ttf;base64,{Convert.ToBase64String(face.File)}) format(\"truetype\"); }}\n"
        );
}
