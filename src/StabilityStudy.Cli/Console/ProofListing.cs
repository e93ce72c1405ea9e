using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes a proof for a person to read: a line a case, every figure that does not agree, and the outcome last.</summary>
internal static class ProofListing
{
    private const string Indent = "  ";

    public static void Write(Terminal terminal, ProgramProof proof, string? document)
    {
        foreach (var part in proof.Parts)
        {
            terminal.Out.WriteLine(part.Title);
            foreach (var item in part.Cases)
            {
                WrappedText.Write(
                    terminal,
                    $"{Indent}{ProofWords.Count(item.Figures), -9} {item.Title}",
                    Indent + new string(' ', 10)
                );
                foreach (
                    var figure in item.Figures.Where(figure => figure.Agreement != Agreement.Agrees)
                )
                {
                    WrappedText.Write(
                        terminal,
                        $"{Indent}{Indent}{ProofWords.Of(figure.Agreement)}: {figure.Name}. Expected {figure.Expected} ({figure.Tolerance}), found {figure.Found}.",
                        Indent + Indent + Indent
                    );
                }
            }

            terminal.Out.WriteLine();
        }

        if (document is not null)
        {
            terminal.Out.WriteLine(document);
        }

        WrappedText.Write(terminal, ProofWords.Outcome(proof));
    }
}
