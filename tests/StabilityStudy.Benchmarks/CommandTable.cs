using System.Text;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Benchmarks;

/// <summary>The commands of the built program as whole processes, each beside a process that does nothing and beside its goal.</summary>
internal static class CommandTable
{
    /// <summary>What asks for this table; the just-in-time program and the native one follow.</summary>
    public const string Word = "commands";

    /// <summary>What adds the study of 10^6 rows.</summary>
    public const string Million = "--million";

    /// <summary>Seconds of a process that does nothing on the machine for which the goals were set.</summary>
    private const double NothingThere = 0.033;

    /// <summary>A command with its goals: seconds on that machine, just in time and native, and megabytes.</summary>
    private sealed record Work(
        string Name,
        double JustInTime,
        double Native,
        double Megabytes,
        params string[] Arguments
    );

    public static int Print(ImmutableArray<string> programs, bool withMillion)
    {
        if (!FreshProcess.CanMeasure || !programs.All(File.Exists))
        {
            Console.WriteLine(
                "Name the built program and, if there is one, the native program; /usr/bin/time measures them."
            );
            return 2;
        }

        var made = Directory.CreateTempSubdirectory("stability-study-benchmark-").FullName;
        try
        {
            var works = Works(programs[0], made);
            var nothing = FreshProcess.Median(Environment.ProcessPath!, FreshProcess.Start);
            Console.WriteLine(
                FormattableString.Invariant(
                    $"1 = a process that does nothing: {nothing.Seconds:0.000} s, {nothing.ProcessorSeconds:0.00} s of processors, {nothing.PeakMegabytes:0} MB\n\n| work | form | time | at most | time of processors | memory | at most |\n| --- | --- | --- | --- | --- | --- | --- |"
                )
            );
            foreach (var work in works)
            {
                for (var form = 0; form < programs.Length; form++)
                {
                    Print(
                        work.Name,
                        form,
                        form == 0 ? work.JustInTime : work.Native,
                        work.Megabytes,
                        FreshProcess.Median(programs[form], work.Arguments),
                        nothing
                    );
                }
            }

            foreach (
                var rows in (int[])(withMillion ? [10_000, 100_000, 1_000_000] : [10_000, 100_000])
            )
            {
                PrintRows(rows, programs, made, nothing);
            }

            return 0;
        }
        finally
        {
            Directory.Delete(made, recursive: true);
        }
    }

    private static ImmutableArray<Work> Works(string program, string folder)
    {
        var aptt = Path.Combine("example-studies", "aptt-room-temperature");
        var routine = Path.Combine("example-studies", "routine-room-temperature");
        var (report, signed) = (Path.Combine(folder, "r.pdf"), Path.Combine(folder, "s.pdf"));
        FreshProcess.Once(program, "trial-certificate", folder, "--name", "Bench One");
        FreshProcess.Once(program, "report", aptt, "-o", report);
        FreshProcess.Once(
            program,
            "sign",
            report,
            "--role",
            "author",
            "--key",
            Path.Combine(folder, "bench-one.p12"),
            "--passphrase-file",
            Path.Combine(folder, "bench-one.passphrase"),
            "-o",
            signed
        );
        return
        [
            new("`--help`", 2 * NothingThere, 0.01, 30, "--help"),
            new("`check` aptt-room-temperature", 0.4, 0.1, 80, "check", aptt),
            new("`report` aptt-room-temperature", 1.5, 0.5, 120, "report", aptt, "-o", report),
            new(
                "`report` routine-room-temperature",
                2.5,
                1.2,
                150,
                "report",
                routine,
                "-o",
                report
            ),
            new(
                "`verify` the aptt report, signed once",
                2,
                0.8,
                120,
                "verify",
                signed,
                "--trust",
                Path.Combine(folder, "bench-one.pem")
            ),
        ];
    }

    /// <summary>Two patient groups: cells of thousands of pairs, as few studies have them, cost most a row.</summary>
    private static void PrintRows(
        int rows,
        ImmutableArray<string> programs,
        string folder,
        FreshProcess nothing
    )
    {
        const double goal = 8;
        const double megabytes = 600;
        const int rowsPerSpecimenOfTwoGroups = 100;
        var study = Path.Combine(folder, rows.ToString(CultureInfo.InvariantCulture));
        Directory.CreateDirectory(study);
        StudyFiles.Write(GeneratedStudy.Of(rows, rows / rowsPerSpecimenOfTwoGroups), study);
        for (var form = 0; form < programs.Length; form++)
        {
            foreach (var command in (string[])["check", "analyze"])
            {
                // Each analysis is the first look at the data, which goes on record with every pair.
                File.Delete(Path.Combine(study, StudyRecord.Name));
                Print(
                    FormattableString.Invariant($"`{command}` of {rows:N0} result rows"),
                    form,
                    rows == 1_000_000 ? goal : null,
                    rows == 1_000_000 ? megabytes : null,
                    FreshProcess.Once(programs[form], command, study),
                    nothing
                );
            }
        }
    }

    private static void Print(
        string name,
        int form,
        double? seconds,
        double? megabytes,
        FreshProcess run,
        FreshProcess nothing
    )
    {
        var line = new StringBuilder();
        line.Append(
            CultureInfo.InvariantCulture,
            $"| {name} | {(form == 0 ? "just in time" : "native")} | {run.Seconds / nothing.Seconds:0.0} ({run.Seconds:0.00} s) | "
        );
        if (seconds is { } goal)
        {
            line.Append(
                CultureInfo.InvariantCulture,
                $"{goal / NothingThere:0.0} ({goal:0.0##} s)"
            );
        }

        line.Append(
            CultureInfo.InvariantCulture,
            $" | {run.ProcessorSeconds:0.00} s | {run.PeakMegabytes:0} MB | "
        );
        if (megabytes is { } most)
        {
            line.Append(CultureInfo.InvariantCulture, $"{most:0} MB");
        }

        Console.WriteLine(line.Append(" |"));
    }
}
