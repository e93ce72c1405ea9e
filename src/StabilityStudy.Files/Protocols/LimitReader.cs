using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a limit of protocol.toml.</summary>
internal static class LimitReader
{
    public static Limit Read(TomlTable table)
    {
        var limit = new Limit(
            Id: table.RequireText("id"),
            Percent: table.OptionalDecimal("percent", NumberRange.LimitPercent),
            AbsoluteInUnit: table.OptionalDecimal("absolute_in_unit", NumberRange.AboveZero),
            Source: table.RequireText("source")
        );
        if (!table.Has("percent") && !table.Has("absolute_in_unit"))
        {
            table.Remark(
                "percent",
                ProtocolQueries.LimitWithoutAmount,
                "",
                $"The limit \"{limit.Id}\" has neither \"percent\" nor \"absolute_in_unit\".",
                "Give percent, absolute_in_unit or both."
            );
        }

        return limit;
    }
}
