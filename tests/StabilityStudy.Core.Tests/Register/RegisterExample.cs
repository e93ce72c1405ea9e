using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;

namespace StabilityStudy.Core.Tests.Register;

/// <summary>
/// An invented register: whole blood for the aPTT is tested within 4 h today, on heparin within 1 h and as plasma taken off the cells by then within 4 h; a study over instrument AN1 and lot R-2601 approved 6 h
/// without anticoagulant and left heparin as it is.
/// </summary>
internal static class RegisterExample
{
    public static DateOnly Today { get; } = new(2026, 5, 4);

    public static DateTimeOffset SignedAt { get; } =
        new(2026, 3, 23, 9, 41, 0, TimeSpan.FromHours(-4));

    public static RegisteredReport Approved { get; } =
        new("approved.pdf", ReportStanding.Decided)
        {
            Code = "WB-RT-APTT",
            InputDigest = "e33e04c4" + new string('0', 56),
            DecidedBy = "Medical Director One",
            DecidedAt = SignedAt,
            Effective = new(2026, 4, 1),
            Review = new(2027, 3, 31),
            Analytes = ["aPTT"],
            Windows =
            [
                None("4 h", "6 h", "6 h") with
                {
                    Conditions = ["Within 3 s of 40 or 60 s: new tube"],
                },
                Heparin("1 h", null, null),
            ],
        };

    public static RegisteredWindow None(string today, string? supported, string? approved) =>
        Window("none", "No anticoagulant", Anticoagulant.None, today, supported, approved);

    public static RegisteredWindow Heparin(string today, string? supported, string? approved) =>
        Window("ufh", "Unfractionated heparin", Anticoagulant.Heparin, today, supported, approved);

    /// <summary>Another study on the same cell, decided a month later.</summary>
    public static RegisteredReport Second(params RegisteredWindow[] windows) =>
        Approved with
        {
            File = "second.pdf",
            InputDigest = "aaaaaaaa" + new string('0', 56),
            Code = "WB-RT-TWO",
            DecidedAt = SignedAt.AddDays(30),
            Effective = null,
            Windows = [.. windows],
        };

    public static BenchQuestion Ask(string waited, string? group = "none") =>
        new("aPTT", Today)
        {
            Group = group,
            Storage = "wb-rt",
            Waited = Time(waited),
        };

    public static BenchAnswer Answer(BenchQuestion question, params RegisteredReport[] reports) =>
        MayTest.Answer(new WindowRegister([.. reports]), question);

    public static TimeSpan Time(string text)
    {
        Assert.True(DurationText.TryParseWindow(text, out var time), text);
        return time;
    }

    private static RegisteredWindow Window(
        string group,
        string name,
        Anticoagulant anticoagulant,
        string today,
        string? supported,
        string? approved
    ) =>
        new(
            new ConcludedWindow(
                "aPTT",
                group,
                "wb-rt",
                supported is null ? null : Time(supported),
                Time(today),
                ["AN1"],
                ["R-2601"],
                []
            ),
            name,
            "whole blood, closed, 18 to 25 °C",
            StorageState.WholeBlood,
            approved is null ? null : Time(approved),
            null,
            []
        )
        {
            Anticoagulant = anticoagulant,
            Handling = new(
                "Activated partial thromboplastin time",
                "s",
                new Storage("wb-rt", StorageState.WholeBlood, Cap.Closed, 18, 25, Time("1 h")),
                new WindowRule(Time(today), "invented")
                {
                    AsPlasma = anticoagulant == Anticoagulant.Heparin ? Time("4 h") : null,
                },
                new WindowRule(Time("4 h"), "invented"),
                new Eligibility(90, 55, RejectClot: true, "invented"),
                TimeOrigin.Collection,
                IsInvented: true
            ),
        };
}
