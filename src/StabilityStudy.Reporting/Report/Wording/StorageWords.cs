using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>A storage in words.</summary>
public static class StorageWords
{
    /// <summary>"whole blood, closed, 18 to 25 °C".</summary>
    public static string Of(Storage storage)
    {
        ArgumentNullException.ThrowIfNull(storage);
        var cap = storage.Cap == Cap.Closed ? "closed" : "open";
        return $"{Of(storage.State)}, {cap}, {NumberText.Plain(storage.LowestCelsius)} to {NumberText.Plain(storage.HighestCelsius)} °C{(storage.Transport is { } route ? $", transported: {route}" : "")}";
    }

    /// <summary>What is in the waiting tube.</summary>
    public static string Of(StorageState state) =>
        state switch
        {
            StorageState.SpunOnCells => "spun tube, plasma on cells",
            StorageState.SeparatedPlasma => "separated plasma",
            StorageState.WholeBlood => "whole blood",
        };
}
