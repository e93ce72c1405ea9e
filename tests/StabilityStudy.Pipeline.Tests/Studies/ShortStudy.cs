using StabilityStudy.Files.Intake;

namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>
/// The example with every fourth specimen, as many planned as there are: every part of a report on a fraction of its lines. A specimen
/// that the facts name is always among them.
/// </summary>
internal static class ShortStudy
{
    private const int Step = 4;
    private const StringComparison Comparison = StringComparison.Ordinal;

    public static StudyBytes Bytes { get; } = Shortened();

    private static StudyBytes Shortened()
    {
        var facts = ExampleStudy.Text(ExampleStudy.Facts);
        var kept = Rows(ExampleStudy.Specimens)
            .Select(Specimen)
            .Distinct()
            .Where((specimen, i) => i % Step == 0 || facts.Contains(specimen, Comparison))
            .ToHashSet();
        return ExampleStudy
            .With(ExampleStudy.Specimens, Only(ExampleStudy.Specimens, kept))
            .WithText(ExampleStudy.Results, Only(ExampleStudy.Results, kept))
            .WithText(
                ExampleStudy.Protocol,
                ExampleStudy
                    .Text(ExampleStudy.Protocol)
                    .Replace(
                        "\"No anticoagulant\", anticoagulant = \"none\", specimens = 50",
                        Planned("No anticoagulant", "none", 'N'),
                        Comparison
                    )
                    .Replace(
                        "\"Unfractionated heparin\", anticoagulant = \"heparin\", specimens = 61",
                        Planned("Unfractionated heparin", "heparin", 'H'),
                        Comparison
                    )
            );

        string Planned(string group, string anticoagulant, char letter) =>
            $"\"{group}\", anticoagulant = \"{anticoagulant}\", specimens = {kept.Count(specimen => specimen[0] == letter)}";
    }

    private static IEnumerable<string> Rows(string file) =>
        ExampleStudy.Text(file).TrimEnd('\n').Split('\n').Skip(1);

    private static string Only(string file, HashSet<string> kept) =>
        string.Join(
            '\n',
            Rows(file)
                .Where(row => kept.Contains(Specimen(row)))
                .Prepend(ExampleStudy.Text(file).Split('\n')[0])
        ) + "\n";

    private static string Specimen(string row) => row.Split(',')[0];
}
