#!/usr/bin/env bash
# Proofs that take hours, for before a release. What it printed last is kept in long-proofs.txt beside it.
#   tests/long-proofs.sh [fuzz] [samples] [kills] [rates] [readers] [packages]      all of them without a word
# fuzz: a million damaged signed files, ten seeds of a hundred thousand, against the verifier: no exception, none above
#       one second, none above 500 MB, and never that all is well. kills: report, lock and sign killed 200 times each.
# samples: what the usual run of the tests tries a fixed part of, in full: every byte of the signatures, 100,000 other damaged
#       files, a million damaged studies, exports, workbooks and messages each, suggestions for 20,000 exports and 40,000 damaged files,
#       300 studies through every shape and dialect, 400 damaged reports, each statement about all studies at 1,000 of them, each simulated rate
#       of the tests over 2,000 studies, the chance of every time point of every ready protocol over 600, every ready protocol from
#       start to a verified signed report, the chances of plan against those of analyze --simulate and against studies from files.
# readers: the text of every signed example, every released report and every forged file (READER_FILES limits these) in poppler,
#       mupdf, ghostscript, PDFBox and pdfium, where PDFIUM is the folder of the npm module @embedpdf/pdfium (.ci/run says which version).
# rates: how often each criterion claims too much, 40,000 studies a row, into tests/StabilityStudy.Benchmarks/ERROR-RATES.md.
# packages: what a release ships is made twice, in two folders, and must be the same bytes; the Debian package is installed in a bare
#       Debian without an SDK (debootstrap, as root), the tool package from a local folder; each reports the example, verifies a signed one, proves itself and is removed.
set -euo pipefail
cd "$(dirname "$0")/.."
parts=${*:-fuzz samples kills rates readers packages}
dotnet build StabilityStudy.sln -c Release -v q >/dev/null
echo "Commit $(git rev-parse --short HEAD), $(date -u +%Y-%m-%d), $(dotnet --version)"

run() { dotnet run -c Release --no-build --project "tests/StabilityStudy.$1.Tests" -- -class "StabilityStudy.$1.Tests.$2" 2>&1; }
run_test() { dotnet run -c Release --no-build --project "tests/StabilityStudy.$1.Tests" -- -method "StabilityStudy.$1.Tests.$2" 2>&1; }
# The test line of one run: total, failed and time, without color.
summary() { sed -n 's/\x1b\[[0-9;]*m//g; s/^ *StabilityStudy[^ ]* *\(Total: .*\)/\1/p'; }

fuzz_one() {
    local found
    found=$(FUZZ_INPUTS=100000 FUZZ_SEED=$1 run SignedPdf Verification.MutatedSignatureTests) || true
    echo "fuzz, seed $1, 100000 inputs: $(summary <<<"$found")"
    case $found in *FAIL*) echo "$found"; return 1 ;; esac
}
export -f fuzz_one run summary

for part in $parts; do
    case $part in
        fuzz) seq 11 20 | xargs -P "${PROCESSES:-$(nproc)}" -I{} bash -c 'fuzz_one {}' ;;
        samples)
            echo "samples, every byte of the signatures: $(BYTE_STEP=1 run SignedPdf Verification.EveryByteTests | summary)"
            echo "samples, 100000 damaged files: $(FUZZ_INPUTS=50000 run SignedPdf Reading.MutatedFileTests | summary)"
            echo "samples, 1000000 damaged workbooks: $(FUZZ_INPUTS=1000000 run_test Files OwnTables.OwnTableFuzzTests.A_damaged_workbook_is_a_query_or_the_same_data | summary)"
            echo "samples, 1000000 damaged exports: $(FUZZ_INPUTS=1000000 run_test Files OwnTables.OwnTableFuzzTests.A_damaged_export_or_description_is_read_or_asked_about | summary)"
            echo "samples, suggestions for 20000 exports and 40000 damaged files: $(SUGGESTED_EXPORTS=10000 run Files Suggestions.SuggestionRoundTripTests | summary)"
            echo "samples, 300 studies in every shape and dialect: $(SHAPED_STUDIES=300 run Files OwnTables.Shapes.ShapeTests | summary)"
            echo "samples, 1000000 damaged messages, 1000000 of random bytes and 50000 studies with them: $(FUZZ_INPUTS=1000000 run Files Messages.MessageFuzzTests | summary)"
            echo "samples, 2000 ways of writing each example as messages: $(MESSAGE_FILES=1000 run Files Messages.ResultMessageTests | summary)"
            echo "samples, 1000000 damaged studies: $(FUZZ_INPUTS=1000000 run Files MutationTests | summary)"
            echo "samples, 400 damaged reports: $(FUZZ_INPUTS=400 run Pipeline Evidence.ReportVerifierTests | summary)"
            echo "samples, 1000 studies a statement: $(STUDIES=1000 run Core Analysis.InvarianceTests | summary)"
            echo "samples, 600 studies a chance of every ready protocol: $(PROTOCOL_STUDIES=600 run Files ReadyProtocols.ReadyProtocolChanceTests | summary)"
            echo "samples, plan against analyze --simulate: $(PLANNED_STUDIES=4000 run Core Planning.PlanAgainstResultsTests | summary)"
            echo "samples, plan against 200 studies from files: $(PLANNED_STUDIES=10000 run Cli Walks.PlannedFrequencyTests | summary)"
            echo "samples, from start to a verified report of every ready protocol: $(WALKS=100 run Cli Walks.ReadyProtocolWalkTests | summary)"
            echo "samples, a study begun from every ready protocol: $(START_PROTOCOLS=100 run Cli StartTests | summary)"
            for rates in LineSimulation MeanSimulation PowerSimulation PredictedPower ScopeSimulation ShareSimulation SharedErrorSimulation; do
                echo "samples, 2000 studies a rate, $rates: $(SIMULATED_STUDIES=2000 run Core "Simulations.${rates}Tests" | summary)"
            done
            ;;
        kills) echo "kills, 200 of each command: $(KILLS=200 run EndToEnd KilledTests | summary)" ;;
        readers)
            shown=$(mktemp)
            export READER_FILES=${READER_FILES:-1000} READER_SUMMARY=$shown
            echo "readers: $(CI=true run EndToEnd DifferentialReadingTests | summary)"
            echo "readers: $(<"$shown")"
            rm -f "$shown"
            ;;
        rates)
            rates=tests/StabilityStudy.Benchmarks/ERROR-RATES.md
            dotnet run -c Release --no-build --project tests/StabilityStudy.Benchmarks -- error-rates 40000 >"$rates.new"
            mv "$rates.new" "$rates"
            echo "rates: $(grep -c '^|' "$rates") lines in $rates"
            ;;
        packages) tests/packages.sh ;;
        *) echo "Unknown part: $part" >&2; exit 2 ;;
    esac
done
