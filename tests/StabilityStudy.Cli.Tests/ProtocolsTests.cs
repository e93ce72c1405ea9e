using System.Text.Json;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

public sealed class ProtocolsTests
{
    [Fact]
    public async Task The_list_names_every_file_of_the_folder_with_its_question()
    {
        var run = await Run.With(
            terminal => terminal with { Width = 200 },
            TestContext.Current.CancellationToken,
            "protocols"
        );

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("", run.Error);
        var lines = run.Out.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        Assert.Equal(Names(), lines.Where((_, index) => index % 2 == 0));
        Assert.All(
            lines.Where((_, index) => index % 2 == 1),
            line => Assert.True(line.Trim().Length > 20, line)
        );
    }

    [Fact]
    public async Task A_protocol_is_printed_as_it_stands_in_its_file()
    {
        foreach (var name in Names())
        {
            var run = await Run.Of("protocols", name);

            Assert.Equal(ExitCode.Done, run.Code);
            Assert.Equal("", run.Error);
            Assert.Equal(
                (
                    await File.ReadAllTextAsync(
                        Path.Combine(Folder, name + ".toml"),
                        TestContext.Current.CancellationToken
                    )
                ).ReplaceLineEndings("\n"),
                run.Out
            );
        }
    }

    [Fact]
    public async Task Json_of_the_list_is_one_document_with_every_name()
    {
        var run = await Run.Of("protocols", "--json");

        using var document = JsonDocument.Parse(run.Out);
        Assert.Equal(
            Names(),
            document
                .RootElement.GetProperty("protocols")
                .EnumerateArray()
                .Select(item => item.GetProperty("name").GetString())
        );
    }

    [Fact]
    public async Task Json_of_a_protocol_holds_what_is_printed_without_it()
    {
        var printed = await Run.Of("protocols", "frozen-plasma-20");
        var run = await Run.Of("protocols", "frozen-plasma-20", "--json");

        using var document = JsonDocument.Parse(run.Out);
        Assert.Equal(printed.Out, document.RootElement.GetProperty("text").GetString());
    }

    [Fact]
    public async Task An_unknown_name_is_answered_with_the_names_there_are()
    {
        var run = await Run.Of("protocols", "frozen");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.All(Names(), name => Assert.Contains(name, run.Error, StringComparison.Ordinal));
    }

    private static string Folder { get; } = Path.Combine(RepositoryFile.Root, "protocols");

    private static string[] Names() =>
        [
            .. Directory
                .EnumerateFiles(Folder, "*.toml")
                .Select(path => Path.GetFileNameWithoutExtension(path))
                .Order(StringComparer.Ordinal),
        ];
}
