using System.Globalization;
using StabilityStudy.Benchmarks;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

// Every figure is a ratio to a sort of a million doubles measured in the same run, so that machines can be compared.
const double level = 0.95;
var folder = args.Length > 0 ? args[0] : Path.Combine("example-studies", "aptt-room-temperature");
var unsorted = Numbers(1_000_000);
var reference = Stopwatch.Median(() => Array.Sort((double[])unsorted.Clone()));
Console.WriteLine("1 = sorting 10^6 doubles");
Print("Passing–Bablok, n = 1,000", () => PassingBablok.Fit(Pairs(1_000), level));
Print("Weighted Deming with jackknife, n = 100", () => Weighted(100));
Print("Weighted Deming with jackknife, n = 1,000", () => Weighted(1_000));
Print("Hodges–Lehmann, n = 500", () => HodgesLehmann.WithInterval(Numbers(500), level));
if (!Directory.Exists(folder))
{
    Console.WriteLine($"There is no folder {folder}: give the path of a study folder.");
    return 2;
}

var files = StudyBytes.Of(
    Directory
        .EnumerateFiles(folder)
        .Where(file => Path.GetExtension(file) is ".toml" or ".csv")
        .Select(file =>
            KeyValuePair.Create(
                Path.GetFileName(file),
                (ReadOnlyMemory<byte>)File.ReadAllBytes(file)
            )
        )
);
if (!StudyPipeline.Analyze(files).TryGet(out var study))
{
    Console.WriteLine("The study has stop queries.");
    return 1;
}

Print("Read and analyze the study", () => StudyPipeline.Analyze(files));
Print("Draw its report", () => StudyPipeline.Render(study, PaperSize.A4));
return 0;

void Print(string what, Action run) =>
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Stopwatch.Median(run) / reference, 8:0.00}  {what}"
        )
    );

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

static Estimate<LineFit> Weighted(int count)
{
    var pairs = Pairs(count);
    return WeightedDemingRegression.Fit(pairs.X.AsSpan(), pairs.Y.AsSpan(), 1, level);
}
