using System.Text.RegularExpressions;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>Every publication that a ready protocol names has a title and an address in the report's references.</summary>
public sealed partial class ReadyProtocolReferenceTests
{
    public static TheoryData<string> Protocols =>
        [.. Directory.GetFiles(Path.Combine(RepositoryFile.Root, "protocols"), "*.toml")];

    [Theory]
    [MemberData(nameof(Protocols))]
    public void An_address_in_a_ready_protocol_is_one_of_the_references(string path)
    {
        var named = Address()
            .Matches(File.ReadAllText(path))
            .Select(match => match.Value.TrimEnd('.', ';', ','))
            .Distinct()
            .ToArray();

        Assert.NotEmpty(named);
        Assert.DoesNotContain(
            named,
            address => !FieldReference.OfSources.Any(reference => reference.IsNamedIn(address))
        );
    }

    [GeneratedRegex(
        @"10\.[0-9]{4,}/[^\s)""]+|PMID [0-9]+|PMC[0-9]+|42 CFR 493\.[0-9]+|87 FR [0-9]+",
        RegexOptions.NonBacktracking
    )]
    private static partial Regex Address();
}
