using StabilityStudy.Benchmarks;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Proportions;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

// Every time is a ratio to one measured in the same run, so that machines can be compared.
const double level = 0.95;
if (args is [FreshProcess.Start])
{
    return 0;
}

if (args is [ErrorRates.Word, ..])
{
    ErrorRates.Print(args.ElementAtOrDefault(1), args.ElementAtOrDefault(2));
    return 0;
}

if (args is [GeneratedRegister.ListWord, var listed])
{
    GeneratedRegister.List(listed);
    return 0;
}

if (args is [GeneratedRegister.Word])
{
    using var register = await GeneratedRegister.Of(2_000);
    var self = Environment.ProcessPath!;
    var nothing = FreshProcess.Median(self, FreshProcess.Start);
    var list = FreshProcess.Median(self, GeneratedRegister.ListWord, register.Folder);
    Console.WriteLine(
        Invariant(
            $"{list.ProcessorSeconds / nothing.ProcessorSeconds, 9:0.000}  List a register of 2,000 reports from the cache, 1 = a process that does nothing (at most 30; {list.Seconds:0.0} s here, peak {list.PeakMegabytes:0} MB)"
        )
    );
    return 0;
}

if (args is [CommandTable.Word, .. var words])
{
    var built = words.Where(word => word != CommandTable.Million).ToImmutableArray();
    return CommandTable.Print(
        built.IsEmpty
            ?
            [
                Path.Combine(
                    "src",
                    "StabilityStudy.Cli",
                    "bin",
                    "Release",
                    "net10.0",
                    "stability-study"
                ),
            ]
            : built,
        words.Contains(CommandTable.Million)
    );
}

if (args is [GeneratedStudy.Word, var rows, var perGroup, var made])
{
    Directory.CreateDirectory(made);
    StudyFiles.Write(
        GeneratedStudy.Of(
            int.Parse(rows, CultureInfo.InvariantCulture),
            int.Parse(perGroup, CultureInfo.InvariantCulture)
        ),
        made
    );
    return 0;
}

var folder = args.FirstOrDefault() ?? Path.Combine("example-studies", "aptt-room-temperature");
if (!Directory.Exists(folder))
{
    Console.WriteLine($"There is no folder {folder}: give the path of a study folder.");
    return 2;
}

var files = StudyFiles.Read(folder);
if (!StudyPipeline.Analyze(files).TryGet(out var study))
{
    Console.WriteLine("The study has stop queries.");
    return 1;
}

var unsorted = Numbers(1_000_000);
var sort = Stopwatch.Median(() => Array.Sort((double[])unsorted.Clone()));
Console.WriteLine(Invariant($"1 = sorting 10^6 doubles ({sort:0} ms here)"));
Warm("Passing–Bablok, n = 1,000", () => PassingBablok.Fit(Pairs(1_000), level));
var many = Pairs(1_000_000);
Warm("Passing–Bablok, n = 10^6 (at most 30)", () => PassingBablok.Fit(many, level));
Warm("Theil–Sen, n = 10^6 (at most 30)", () => TheilSen.Fit(many, level));
Warm("10,000 BCa samples of a Deming slope, n = 100 (at most 0.6)", () => Bootstrapped(100));
var drifting = Drifting(200, 8);
Warm(
    "Mixed model, 200 specimens at 8 delays (at most 0.2)",
    () => RandomSlope.Fit(drifting, level)
);
Warm("Weighted Deming with jackknife, n = 100", () => Weighted(100));
Warm("Weighted Deming with jackknife, n = 1,000", () => Weighted(1_000));
Warm("Exact limits of agreement, n = 100", () => LimitsOfAgreement.Compute(Numbers(100), level));
Warm("Clopper–Pearson, 1,000 times", () => Bounds(1_000));
Warm("Hodges–Lehmann, n = 500", () => HodgesLehmann.WithInterval(Numbers(500), level));
Warm("Read and analyze the study", () => StudyPipeline.Analyze(files));
Warm("Draw its report", () => StudyPipeline.Render(study, PaperSize.A4));
return 0;

void Warm(string what, Action run) =>
    Console.WriteLine(Invariant($"{Stopwatch.Median(run) / sort, 9:0.000}  {what}"));

static string Invariant(FormattableString text) => FormattableString.Invariant(text);

static void Bounds(int times)
{
    for (var i = 0; i < times; i++)
    {
        ClopperPearson.Bounds(38 + (i % 3), 40, level);
    }
}

static double[] Numbers(int count)
{
    var random = new SeededRandom(1);
    return [.. Enumerable.Range(0, count).Select(_ => random.NextNormal())];
}

static ExactPairs Pairs(int count)
{
    var random = new SeededRandom(2);
    var x = Enumerable
        .Range(0, count)
        .Select(_ => Math.Round((decimal)(40 + 10 * random.NextDouble()), 1))
        .ToArray();
    return ExactPairs.Create(
        x,
        [.. x.Select(value => Math.Round(value * (decimal)(1.05 + 0.03 * random.NextNormal()), 1))]
    );
}

static Estimate<SlopeBootstrapInterval> Bootstrapped(int count)
{
    var pairs = Pairs(count);
    return SlopeBootstrap.Deming(pairs.X.AsSpan(), pairs.Y.AsSpan(), 1, level, 10_000, 1);
}

static ImmutableArray<SpecimenResponses> Drifting(int specimens, int delays)
{
    var random = new SeededRandom(3);
    return
    [
        .. Enumerable
            .Range(0, specimens)
            .Select(_ =>
            {
                var (own, slope) = (20 * random.NextNormal(), 2 + random.NextNormal());
                ImmutableArray<double> growth =
                [
                    .. Enumerable
                        .Range(0, delays)
                        .Select(i => Math.Log(1 + (3 * i) + random.NextDouble())),
                ];
                return new SpecimenResponses(
                    growth,
                    [.. growth.Select(g => 340 + own + (slope * g) + (2 * random.NextNormal()))]
                );
            }),
    ];
}

static Estimate<LineFit> Weighted(int count)
{
    var pairs = Pairs(count);
    return WeightedDemingRegression.Fit(pairs.X.AsSpan(), pairs.Y.AsSpan(), 1, level);
}
