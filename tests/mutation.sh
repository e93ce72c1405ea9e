#!/usr/bin/env bash
# Changes the statistics one place at a time and asks whether a test notices. Takes hours, for before a release; what it printed last is kept in mutation.txt beside it.
#   tests/mutation.sh [Folder …]      all folders of src/StabilityStudy.Statistics without a word
# Each folder is held against the tests of the same folder alone, without the slow simulations, so that a mutant takes seconds: what the tests of other folders would notice too is not counted.
# Survivors are printed with the line that was changed. Texts are left alone.
set -euo pipefail
cd "$(dirname "$0")/.."
root=$PWD
folders=${*:-Agreement Distributions Drift Location Noise Outliers Planning Proportions Regression Resampling}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet tool install dotnet-stryker --version 5.1.0 --tool-path "$work/tool" >/dev/null
echo "Commit $(git rev-parse --short HEAD), $(date -u +%Y-%m-%d), dotnet-stryker 5.1.0"
for folder in $folders; do
    rm -rf "$work/copy"
    git clone -q "$root" "$work/copy"
    cd "$work/copy/tests/StabilityStudy.Statistics.Tests"
    find . -name '*Tests.cs' -not -path "./$folder/*" -delete
    find . \( -name '*SimulationTests.cs' -o -name '*CoverageTests.cs' \) -delete
    # The first test that fails decides; xUnit reads this file beside the tests.
    echo '{ "stopOnFail": true }' >xunit.runner.json
    sed -i 's|</Project>|<ItemGroup><None Include="xunit.runner.json" CopyToOutputDirectory="PreserveNewest" /></ItemGroup></Project>|' ./*.csproj
    cat >"$work/stryker.json" <<JSON
{ "stryker-config": { "test-runner": "mtp", "project": "StabilityStudy.Statistics.csproj", "concurrency": 2,
  "reporters": ["json"], "coverage-analysis": "off", "additional-timeout": 12000,
  "mutate": ["$folder/*.cs"], "ignore-mutations": ["string"] } }
JSON
    if ! "$work/tool/dotnet-stryker" -f "$work/stryker.json" -O "$work/$folder" >"$work/log" 2>&1; then
        tail -n 20 "$work/log"
    fi
    cd "$root"
    python3 - "$folder" "$work/$folder/reports/mutation-report.json" <<'PY'
import json, sys
counts, survivors = {}, []
for name, file in json.load(open(sys.argv[2]))["files"].items():
    lines = file["source"].split("\n")
    for mutant in file["mutants"]:
        status = mutant["status"]
        counts[status] = counts.get(status, 0) + 1
        if status in ("Survived", "NoCoverage"):
            line = mutant["location"]["start"]["line"]
            survivors.append(f"    {name.split('/')[-1]} {line}: {lines[line - 1].strip()[:90]} => {' '.join(mutant.get('replacement', '').split())[:70]}")
killed = counts.get("Killed", 0) + counts.get("Timeout", 0)
tested = killed + len(survivors)
print(f"{sys.argv[1]}: {killed} of {tested} killed, {100 * killed / max(tested, 1):.1f} %; {counts.get('Timeout', 0)} of them by running without end")
print("\n".join(survivors))
PY
done
