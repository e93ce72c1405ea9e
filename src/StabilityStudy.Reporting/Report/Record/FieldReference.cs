namespace StabilityStudy.Reporting.Report.Record;

/// <summary>A publication of the field, as its public record or abstract shows it.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Where">Journal and year, or number of the rule.</param>
/// <param name="Address">DOI or address.</param>
/// <param name="Bounds">What bounds the figures taken from it; empty for none.</param>
/// <param name="Marks">Any of these in a source of the protocol names it.</param>
internal sealed record FieldReference(
    string Title,
    string Where,
    string Address,
    string Bounds,
    ImmutableArray<string> Marks
)
{
    /// <summary>Title, journal and address, and what bounds its figures.</summary>
    public string Entry =>
        $"{Title}. {Where}, {Address}{(Bounds.Length == 0 ? "" : $" ({Bounds})")}.";

    /// <summary>How a stability study is designed.</summary>
    public static readonly FieldReference Design = new(
        "Recommendation for the design of stability studies on clinical specimens",
        "Clin Chem Lab Med 2023;61:1708–1718",
        "doi 10.1515/cclm-2023-0221",
        "",
        []
    );

    /// <summary>What the report of a stability study tells.</summary>
    public static readonly FieldReference Checklist = new(
        "The CRESS checklist for reporting stability studies",
        "Clin Chem Lab Med 2020",
        "doi 10.1515/cclm-2020-0061",
        "",
        []
    );

    /// <summary>The published drift that is drawn beside that of a study.</summary>
    public static readonly FieldReference Instability = new(
        "Consensus instability equations for routine coagulation tests",
        "Clin Chem Lab Med 2025",
        "doi 10.1515/cclm-2025-0117",
        "the strength of its model for PT is limited",
        ["10.1515/cclm-2025-0117"]
    );

    /// <summary>What the sources of a protocol may name.</summary>
    public static readonly ImmutableArray<FieldReference> OfSources =
    [
        Instability,
        new(
            "CLIA Proficiency Testing Regulations Related to Analytes and Acceptable Performance",
            "87 FR 41194 (2022), which amends 42 CFR 493.941",
            "https://www.govinfo.gov/content/pkg/FR-2022-07-11/html/2022-14513.htm",
            "seen: PT and INR, ±15 %; no other coagulation test",
            ["493.941", "87 FR 41"]
        ),
        new(
            "Monitoring unfractionated heparin therapy. 4 hour-stability of anti-Xa activity in unspun citrated tubes",
            "Thromb Res 2020;186:7–12",
            "doi 10.1016/j.thromres.2019.10.019",
            "123 paired tubes",
            ["31837560", "10.1016/j.thromres.2019.10.019"]
        ),
        new(
            "Impact of different storage times at room temperature of unspun citrated blood samples on routine coagulation tests results",
            "Int J Lab Hematol 2017",
            "doi 10.1111/ijlh.12660",
            "its figures for factor VIII are of specimens above 100 IU/dL, with baselines within 2 h",
            ["28481034", "10.1111/ijlh.12660"]
        ),
        new(
            "Effects of storage time and temperature on coagulation tests and factors in fresh plasma",
            "Sci Rep 2014;4:3868",
            "doi 10.1038/srep03868",
            "separated plasma, no D-dimer; its criterion pairs a mean beyond 10 % with more than 25 % of the samples beyond 10 %",
            ["24463857", "10.1038/srep03868", "4:3868"]
        ),
        new(
            "Stability of coagulation proteins in frozen plasma",
            "Blood Coagul Fibrinolysis 2001;12:229–236",
            "doi 10.1097/00001721-200106000-00002",
            "10 % and 18 months are of −74 °C, at −24 °C the change stayed below 5 % for 3 months; normal plasma",
            ["11460005", "10.1097/00001721-200106000-00002"]
        ),
        new(
            "Effects of storage time and temperature on coagulation factor and natural anticoagulant activities in healthy individuals",
            "Sci Rep 2025",
            "doi 10.1038/s41598-025-95389-w",
            "at −15 to −25 °C factors V and VIII changed by more than 15 %",
            ["10.1038/s41598-025-95389-w"]
        ),
        new(
            "Pre-analytical issues in the haemostasis laboratory: guidance for the clinical laboratories",
            "Thromb J 2016;14:49",
            "doi 10.1186/s12959-016-0123-z",
            "its table 7: thaw at 37 °C for 5 min; no PT, aPTT or factor VIII from frozen plasma where avoidable, and −70 °C rather than −20 °C",
            ["10.1186/s12959-016-0123-z", "PMC5154122"]
        ),
        new(
            "The determination of INR in stored whole blood",
            "J Clin Pathol 1998;51:360–363",
            "https://pmc.ncbi.nlm.nih.gov/articles/PMC500694",
            "single INR changed by more than 0.5 at 24 h in all five systems, and it does not recommend to store whole blood for INR",
            ["PMC500694"]
        ),
        new(
            "Within- and between-subject biological variation of hemostasis parameters in a study of 26 healthy individuals",
            "Turk J Biochem 2023",
            "doi 10.1515/tjb-2023-0155",
            "CVI and CVG: PT 3.2 and 5.8 %, aPTT 5.8 and 8.4 %, fibrinogen 11 and 17.4 %",
            ["10.1515/tjb-2023-0155"]
        ),
        new(
            "Biological and analytical variations of 16 parameters related to coagulation screening tests and the activity of coagulation factors",
            "Semin Thromb Hemost 2015;41:336–341",
            "doi 10.1055/s-0034-1543994",
            "CVI below 5 % for screening tests but fibrinogen, above 5 % for factors; 31 healthy volunteers",
            ["25839868", "10.1055/s-0034-1543994"]
        ),
        new(
            "Biological variation of hemostasis variables in thrombosis and bleeding: consequences for performance specifications",
            "Clin Chem 2016;62:1639–1646",
            "doi 10.1373/clinchem.2016.261248",
            "CVI and CVG of PT 2.6 and 4.1 %; 40 healthy persons over a year",
            ["10.1373/clinchem.2016.261248"]
        ),
        new(
            "Establishing biological variation for plasma D-dimer from 25 healthy individuals",
            "Scand J Clin Lab Invest 2021",
            "doi 10.1080/00365513.2021.1947522",
            "CVI 21.2 %, CVG 30.9 %",
            ["10.1080/00365513.2021.1947522"]
        ),
        new(
            "Stability of coagulation assays performed in plasma from citrated whole blood transported at ambient temperature",
            "Thromb Haemost 2008",
            "doi 10.1160/TH07-09-0574",
            "title from memory",
            ["10.1160/TH07-09-0574"]
        ),
        new(
            "Adjustment of citrate for a high hematocrit",
            "Clin Lab Sci 2013",
            "doi 10.29074/ascls.26.2.89",
            "title not seen; named by its subject; it saw no need to adjust up to 60 %",
            ["10.29074/ascls.26.2.89"]
        ),
        new(
            "von Willebrand factor in whole blood on ice and at room temperature",
            "Blood Coagul Fibrinolysis 2006",
            "doi 10.1097/01.mbc.0000198990.16598.85",
            "title not seen; named by its subject",
            ["10.1097/01.mbc.0000198990.16598.85"]
        ),
        new(
            "Stability of direct oral anticoagulants in plasma",
            "Scand J Clin Lab Invest 2021",
            "doi 10.1080/00365513.2021.1946844",
            "title not seen; named by its subject",
            ["10.1080/00365513.2021.1946844"]
        ),
        new(
            "Stability of direct oral anticoagulants in refrigerated whole blood",
            "Medicina 2023;59:1339",
            "doi 10.3390/medicina59071339",
            "title not seen; named by its subject",
            ["10.3390/medicina59071339"]
        ),
        new(
            "Coagulation factors in thawed plasma kept refrigerated for five days",
            "J Blood Transfus 2016",
            "https://pmc.ncbi.nlm.nih.gov/articles/PMC5143734",
            "title not seen; named by its subject",
            ["PMC5143734"]
        ),
        new(
            "von Willebrand disease: evidence-based diagnosis and management guidelines",
            "2009",
            "https://pmc.ncbi.nlm.nih.gov/articles/PMC5592788",
            "title from memory",
            ["PMC5592788"]
        ),
        new(
            "Preanalytical variables and off-site blood collection: influences on the results of the prothrombin time/international normalized ratio test",
            "Clin Chem 2005",
            "https://pubmed.ncbi.nlm.nih.gov/15650035/",
            "title from memory; four laboratories",
            ["15650035"]
        ),
        new(
            "Is it acceptable to use coagulation plasma samples stored at room temperature and 4 °C for 24 hours for additional testing?",
            "Int J Lab Hematol 2017",
            "https://pubmed.ncbi.nlm.nih.gov/28488785/",
            "title from memory",
            ["28488785"]
        ),
        new(
            "Stability of anticoagulant proteins in frozen plasma",
            "Thromb J 2024",
            "doi 10.1186/s12959-024-00640-5",
            "title not seen; named by its subject; 29 patients",
            ["10.1186/s12959-024-00640-5"]
        ),
        new(
            "Influences of temperature and storage duration on coagulation tests in citrate-anticoagulated whole blood specimens",
            "Int J Lab Hematol 2013",
            "doi 10.1111/ijlh.12113",
            "title from memory",
            ["10.1111/ijlh.12113"]
        ),
        new(
            "Unfractionated heparin: change of aPTT and anti-Xa activity from one hour to four",
            "J Thromb Thrombolysis 2019",
            "doi 10.1007/s11239-019-01882-1",
            "title not seen; named by its subject; 31 patients",
            ["10.1007/s11239-019-01882-1"]
        ),
        new(
            "Variation of the INR within persons on stable warfarin",
            "Thromb Res 2012;130:535",
            "https://pubmed.ncbi.nlm.nih.gov/22698433/",
            "title not seen; named by its subject; 245 patients",
            ["22698433"]
        ),
        new(
            "Stability of D-dimer in plasma",
            "Thromb Haemost 2010",
            "doi 10.1160/TH09-04-0230",
            "title not seen; named by its subject; 40 specimens",
            ["10.1160/TH09-04-0230"]
        ),
        new(
            "aPTT of heparinized whole blood by temperature, four reagents",
            "Thromb Haemost 1987",
            "doi 10.1055/s-0038-1651099",
            "title not seen; named by its subject",
            ["10.1055/s-0038-1651099"]
        ),
        new(
            "The effect of time and temperature variables on routine coagulation tests",
            "Blood Coagul Fibrinolysis 1998",
            "https://pubmed.ncbi.nlm.nih.gov/9818995/",
            "title from memory",
            ["9818995"]
        ),
        new(
            "Stability of D-dimer by two methods",
            "J Microbiol Exp 2016",
            "doi 10.15406/jmen.2016.03.00095",
            "title not seen; named by its subject; 60 specimens",
            ["10.15406/jmen.2016.03.00095"]
        ),
        new(
            "Hematology and coagulation: control procedures",
            "42 CFR 493.1269",
            "https://www.ecfr.gov/current/title-42/part-493/section-493.1269",
            "title and address from memory",
            ["493.1269"]
        ),
    ];

    /// <summary>Whether a source names it.</summary>
    public bool IsNamedIn(string source) =>
        Marks.Any(mark => source.Contains(mark, StringComparison.OrdinalIgnoreCase));
}
