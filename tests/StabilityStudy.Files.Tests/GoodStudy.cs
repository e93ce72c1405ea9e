using System.Text;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>A small study without any query. Tests break it in one place.</summary>
internal static class GoodStudy
{
    public const string Protocol = """"
        format = 1
        code = "WB-RT-12"
        version = "2"
        time_points = ["6 h", "8 h"]
        tolerance = { early = "0 min", late = "30 min" }
        baseline_within = "1 h"
        tube_plan = "a tube per time point"
        minimum_days = 5
        window_step = "30 min"
        signatories = [{ role = "author", meaning = "ran this study" }, { role = "approver", meaning = "approves its conclusion" }]
        storage = [{ id = "wb-rt", state = "whole blood", cap = "closed", celsius = [18, 25], spin_to_test = "1 h" }]
        group = [{ id = "none", name = "No anticoagulant", specimens = 40 }]
        eligibility = { fill_percent_min = 90, hematocrit_percent_max = 55, clot = "reject", source = "common practice" }

        [[analyte]]
        id = "aPTT"
        name = "Activated partial thromboplastin time"
        loinc = "14979-9"
        unit = "s"
        decimals = 1
        standard_window = { time = "4 h", source = "common practice" }
        manufacturer_limit = { time = "4 h", document = "instructions revision 3" }
        cv_percent = { between_run = 2.5 }
        measuring_interval = [20.0, 180.0]
        decision_levels = [40.0, 60.0]

        [[limit]]
        id = "aptt-bias"
        percent = 7.5
        source = "share of the total allowance"

        [[limit]]
        id = "aptt-each"
        percent = 15
        absolute_in_unit = 2.0
        source = "regulation"

        [[criterion]]
        id = "mean"
        kind = "bias"
        limits = { aPTT = "aptt-bias" }
        scale = "percent"
        confidence = 0.90

        [[criterion]]
        id = "each"
        kind = "individual"
        limits = { aPTT = "aptt-each" }
        share_percent_min = 85
        confidence = 0.95

        """";

    public const string Facts = """"
        format = 1
        title = "aPTT in whole blood"
        facility = "Invented laboratory"
        question = "May whole blood wait eight hours?"
        invented = true
        time_zone = "Europe/Berlin"

        [[person]]
        code = "P1"
        name = "Person One"
        role = "lab scientist"

        [[instrument]]
        id = "A1"
        name = "Analyzer one"

        [[lot]]
        id = "L1"
        kind = "reagent"
        analyte = "aPTT"
        expires = "2027-01-31"

        [clock]
        collected_at = "label printer"
        tested_at = "analyzer"

        [files]
        specimens = "specimens.csv"
        results = "results.csv"

        [[exclusion]]
        specimen = "S-002"
        analyte = "aPTT"
        time_point = "8 h"
        reason = "Kept in the refrigerator."
        by = "P1"
        on = 2026-03-03

        [[deviation]]
        text = "One tube was filled short."
        by = "P1"
        on = "2026-03-03"

        """";

    public const string Specimens = """"
        specimen,tube,subject,group,storage,draw_position,collected_at,received_at,spun_at,separated_at,frozen_at,thawed_at,fill_percent,inversions,hematocrit_percent,hemolysis,clot,device,origin
        S-001,A,X-01,none,wb-rt,1,2026-03-02T07:00,2026-03-02T07:20,2026-03-02T07:30,,,,95.0,5,41.5,none,no,straight needle,native
        S-001,B,X-01,none,wb-rt,2,2026-03-02T07:00,2026-03-02T07:20,2026-03-02T12:40,,,,97,5,41.5,slight,no,"needle, ""short""",native
        S-002,A,X-02,none,wb-rt,1,2026-03-03T07:00:10+01:00,,2026-03-03T06:30:00Z,,,,,,,,,,
        S-002,B,X-02,none,wb-rt,2,2026-03-03T07:00:10+01:00,,,,,,,,,,,,

        """";

    public const string Results = """"
        specimen,tube,analyte,time_point,replicate,tested_at,result,unit,run,instrument,lot,calibration,operator,flag,remark
        S-001,A,aPTT,baseline,1,2026-03-02T07:50,31.2,s,R1,A1,L1,C1,P1,,
        S-001,B,aPTT,6 h,1,2026-03-02T13:05,32.5,s,R2,A1,L1,C1,P1,,
        S-002,A,aPTT,baseline,1,2026-03-03T07:55,>180,s,R3,A1,L1,C1,P1,ERROR,"above, the limit"
        S-002,B,aPTT,8 h,,,QNS,,,,,,,,

        """";

    public const string Controls = """"
        control,analyte,run,tested_at,result,unit,target,allowed_low,allowed_high,kind
        N1,aPTT,R1,2026-03-02T07:40,30.1,s,30.0,28,32.0,control
        N1,aPTT,R2,2026-03-02T13:00,30.4,s,30.0,28,32.0,
        BP,aPTT,R2,2026-03-02T13:01,45.2,s,,,,bridging plasma
        N1,aPTT,R3,2026-03-03T07:40:00+01:00,NA,,30.0,28,32.0,control

        """";

    public static StudyBytes Bytes { get; } =
        Of(
            ("protocol.toml", Protocol),
            ("study.toml", Facts),
            ("specimens.csv", Specimens),
            ("results.csv", Results),
            ("controls.csv", Controls)
        );

    public static StudyBytes Of(params (string Name, string Text)[] files) =>
        StudyBytes.Of(files.Select(file => KeyValuePair.Create(file.Name, Utf8(file.Text))));

    public static ReadOnlyMemory<byte> Utf8(string text) => Encoding.UTF8.GetBytes(text);

    public static string Text(StudyBytes files, string name) =>
        Encoding.UTF8.GetString(files.Files[name].Span);

    /// <summary>The good study with one text of one file replaced, once.</summary>
    public static StudyBytes Edited(string file, string from, string to)
    {
        var text = Text(Bytes, file);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{file} does not hold {from}");
        return Bytes.With(file, Utf8(text[..at] + to + text[(at + from.Length)..]));
    }

    /// <summary>The line of a file on which a text stands.</summary>
    public static int LineOf(string file, string from)
    {
        var text = Text(Bytes, file);
        return text[..text.IndexOf(from, StringComparison.Ordinal)].Count(c => c == '\n') + 1;
    }
}
