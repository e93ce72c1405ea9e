#!/usr/bin/env bash
# Changes the statistics one place at a time and asks whether a test notices. Takes hours, for before a release; what it printed last is kept in mutation.txt beside it.
#   tests/mutation.sh [Folder | Folder/File.cs …]      all folders of src/StabilityStudy.Statistics without a word
# Each folder is held against the tests of the same folder alone, without the slow simulations, so that a mutant takes seconds: what the tests of other folders would notice too is not counted.
# Stryker makes one assembly with every mutant in it. Each mutant then runs in a process of its own: one that never ends can be killed, and leaves nothing behind for the next.
# Survivors are printed with the line that was changed. Texts are left alone.
set -euo pipefail
cd "$(dirname "$0")/.."
root=$PWD
parts=${*:-Agreement Distributions Drift Location Noise Outliers Planning Proportions Regression Resampling}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet tool install dotnet-stryker --version 5.1.0 --tool-path "$work/tool" >/dev/null
echo "Commit $(git rev-parse --short HEAD), $(date -u +%Y-%m-%d), mutants of dotnet-stryker 5.1.0"

# The only test of this copy saves the assembly that Stryker has put under it.
git clone -q "$root" "$work/make"
cd "$work/make/tests/StabilityStudy.Statistics.Tests"
find . -name '*.cs' -delete
cat >SaveTests.cs <<CS
namespace StabilityStudy.Statistics.Tests;
public class SaveTests
{
    [Xunit.Fact]
    public void Save() => System.IO.File.Copy(typeof(Estimate).Assembly.Location, "$work/mutated.dll", true);
}
CS
mutate=""
for part in $parts; do
    case $part in *.cs) mutate+="\"$part\"," ;; *) mutate+="\"$part/*.cs\"," ;; esac
done
cat >"$work/stryker.json" <<JSON
{ "stryker-config": { "test-runner": "mtp", "project": "StabilityStudy.Statistics.csproj", "concurrency": 12,
  "reporters": ["json"], "coverage-analysis": "off", "mutate": [${mutate%,}], "ignore-mutations": ["string"] } }
JSON
"$work/tool/dotnet-stryker" -f "$work/stryker.json" -O "$work/made" >"$work/log" 2>&1 || { tail -n 20 "$work/log"; exit 1; }

for part in $parts; do
    folder=${part%%/*}
    cd "$root"
    rm -rf "$work/copy"
    git clone -q "$root" "$work/copy"
    cd "$work/copy/tests/StabilityStudy.Statistics.Tests"
    find . -name '*Tests.cs' -not -path "./$folder/*" -delete
    find . \( -name '*SimulationTests.cs' -o -name '*CoverageTests.cs' \) -delete
    dotnet build -v q >"$work/log" 2>&1 || { tail -n 20 "$work/log"; exit 1; }
    cd bin/Debug/net10.0
    cp "$work/mutated.dll" StabilityStudy.Statistics.dll
    python3 - "$part" "$work/made/reports/mutation-report.json" <<'PY'
import collections, concurrent.futures, json, os, subprocess, sys, threading, time

TESTS = ["dotnet", "StabilityStudy.Statistics.Tests.dll", "-stopOnFail"]
part, report = sys.argv[1:]


def run(mutant, seconds):
    """Killed, Survived, or Endless when no test had failed after so many seconds."""
    environment = dict(os.environ, STRYKER_MUTANT_ID_CONTROL_VAR="MUTANT", MUTANT=mutant)
    process = subprocess.Popen(TESTS, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    late = threading.Event()
    timer = threading.Timer(seconds, lambda: (late.set(), process.kill()))
    timer.start()
    failed = any("[FAIL]" in line for line in process.stdout)
    if failed:
        process.kill()
    code = process.wait()
    timer.cancel()
    process.stdout.close()
    return "Killed" if failed else "Endless" if late.is_set() else "Survived" if code == 0 else "Killed"


start = time.time()
if run("-1", 600) != "Survived":
    sys.exit(f"{part}: its tests fail without a mutant.")
patience = 8 + 3 * (time.time() - start)
mutants = [
    (name.split("/")[-1], file["source"].split("\n"), mutant)
    for name, file in json.load(open(report))["files"].items()
    if f"/{name}".endswith(f"/{part}") or name.split("/")[-2] == part
    for mutant in file["mutants"]
    if mutant["status"] not in ("Ignored", "CompileError")
]
counts = collections.Counter()
with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
    for (file, lines, mutant), fate in zip(mutants, pool.map(lambda item: run(item[2]["id"], patience), mutants)):
        counts[fate] += 1
        if fate == "Survived":
            line = mutant["location"]["start"]["line"]
            print(f"    {file} {line}: {lines[line - 1].strip()[:90]} => {' '.join(mutant.get('replacement', '').split())[:70]}", flush=True)
killed, tested = counts["Killed"] + counts["Endless"], counts.total()
print(f"{part}: {killed} of {tested} killed, {100 * killed / max(tested, 1):.1f} %; {counts['Endless']} of them by running without end", flush=True)
PY
done
