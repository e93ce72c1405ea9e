namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a storage of protocol.toml.</summary>
internal static class StorageReader
{
    public static Storage Read(TomlTable table)
    {
        var celsius = table.Read(StorageKeys.Celsius);
        var storage = new Storage(
            Id: table.Read(StorageKeys.Id),
            State: table.Read(StorageKeys.State),
            Cap: table.Read(StorageKeys.Cap),
            LowestCelsius: celsius.Lowest,
            HighestCelsius: celsius.Highest,
            SpinToTest: table.Read(StorageKeys.SpinToTest)
        )
        {
            SpinTakes = table.Read(StorageKeys.SpinTakes),
            Transport = table.Read(StorageKeys.Transport),
        };
        if (
            table.IsSound(StorageKeys.State)
            && storage.State == StorageState.WholeBlood
            && !table.Has(StorageKeys.SpinToTest)
        )
        {
            table.Fault(
                StorageKeys.SpinToTest,
                FileQueries.MissingKey,
                "",
                "Whole blood needs \"spin_to_test\": the longest time from spinning to the test.",
                "Add spin_to_test, such as \"1 h\"."
            );
        }

        return storage;
    }
}
