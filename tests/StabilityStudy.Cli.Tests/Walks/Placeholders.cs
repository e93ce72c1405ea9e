using System.Globalization;
using System.Text.RegularExpressions;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>What a laboratory fills in: the places of the protocol that are marked, and the tables of study.toml that start explains.</summary>
internal static partial class Placeholders
{
    /// <summary>The protocol with every marked place answered.</summary>
    public static string Answered(string protocol)
    {
        var lines = protocol
            .ReplaceLineEndings("\n")
            .Replace("\n#: ", "\n", StringComparison.Ordinal)
            .Split('\n')
            .SelectMany(line =>
                line.StartsWith('#') ? [line]
                : line.StartsWith("standard_window = ", StringComparison.Ordinal)
                    ?
                    [
                        line,
                        $"manufacturer_limit = {{ time = {Window().Match(line).Value}, document = \"instructions for use of the invented reagent, revision 3\" }}",
                    ]
                : (string[])[Marked().Replace(line, "as this invented laboratory does it")]
            );
        return string.Join('\n', lines)
            .Replace(
                "from memory, look it up",
                "looked up by this invented laboratory",
                StringComparison.Ordinal
            );
    }

    /// <summary>Puts what was recorded in the place of the table that start shows as an example.</summary>
    public static string Fill(string facts, string table, string recorded)
    {
        var lines = facts.Split('\n').ToList();
        var first = lines.IndexOf("#" + table);
        Assert.True(first >= 0, table);
        var last = first;
        while (
            lines[last + 1].StartsWith('#')
            && !lines[last + 1].StartsWith("# ", StringComparison.Ordinal)
        )
        {
            last++;
        }

        lines.RemoveRange(first, last - first + 1);
        lines.InsertRange(first, recorded.ReplaceLineEndings("\n").Split('\n').Prepend(table));
        return string.Join('\n', lines);
    }

    /// <summary>What the protocol asks to be recorded for the whole study.</summary>
    public static string Recorded(string facts, StudyProtocol protocol)
    {
        facts = Fill(
            facts,
            "[collection_tube]",
            $"name = \"{protocol.Draw?.Tube ?? "invented tube of 2.7 mL, plastic"}\"\ncitrate_percent = {Number(protocol.Draw?.CitratePercent ?? 3.2m)}"
        );
        facts = Fill(
            facts,
            "[spinning]",
            $"""
            centrifuge = "C-2, invented"
            relative_force = {protocol.Spin!.RelativeForce}
            duration = "{DurationText.Format(protocol.Spin.Duration)}"
            spins = {protocol.Spin.Spins}
            celsius = [20, 22]
            platelets = 6
            """
        );
        facts = Fill(
            facts,
            "[[temperature]]",
            string.Join(
                "\n[[temperature]]\n",
                protocol.Storages.Select(storage =>
                    $"""
                        storage = "{storage.Id}"
                        celsius = [{Number(storage.LowestCelsius + 1)}, {Number(
                            storage.HighestCelsius - 1
                        )}]
                        device = "logger L-7, every 5 min, invented"
                        """
                )
            )
        );
        if (protocol.Freezing is { } freezing)
        {
            facts = Fill(
                facts,
                "[thawing]",
                $"""
                celsius = [{Number(freezing.ThawCelsius.Lowest)}, {Number(
                    freezing.ThawCelsius.Highest
                )}]
                duration = "{DurationText.Format(freezing.ThawFor)}"
                device = "water bath WB-1, invented"
                """
            );
        }

        facts = Fill(
            facts,
            "[clock]",
            """
            collected_at = "label printer"
            received_at = "laboratory system"
            spun_at = "wall clock"
            separated_at = "wall clock"
            frozen_at = "wall clock"
            thawed_at = "wall clock"
            tested_at = "analyzer"
            """
        );
        return Fill(
                facts,
                "[subjects]",
                """
                source = "invented patients with a coagulation test ordered"
                selection = "in the order of arrival, by the group's rule, before any result"
                ethics = "invented committee decision 2026-014; written consent"
                """
            )
            .Replace("\n#funding = ", "\nfunding = ", StringComparison.Ordinal)
            .Replace("\n#interests = ", "\ninterests = ", StringComparison.Ordinal);
    }

    private static string Number(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex("CHANGE: [^\"]*", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Marked();

    [GeneratedRegex("\"[^\"]*\"", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Window();
}
