using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a storage of protocol.toml.</summary>
internal static class StorageReader
{
    public static Storage Read(TomlTable table)
    {
        var celsius = IntervalReader.Read(table, "celsius", NumberRange.Celsius, allowEqual: true);
        var storage = new Storage(
            Id: table.RequireText("id"),
            State: table.RequireChoice("state", FileWords.States),
            Cap: table.RequireChoice("cap", FileWords.Caps),
            LowestCelsius: celsius.Lowest,
            HighestCelsius: celsius.Highest,
            SpinToTest: table.OptionalDuration("spin_to_test")
        );
        if (
            table.IsSound("state")
            && storage.State == StorageState.WholeBlood
            && !table.Has("spin_to_test")
        )
        {
            table.Fault(
                "spin_to_test",
                FileQueries.MissingKey,
                "",
                "Whole blood needs \"spin_to_test\": the longest time from spinning to the test.",
                "Add spin_to_test, such as \"1 h\"."
            );
        }

        return storage;
    }
}
