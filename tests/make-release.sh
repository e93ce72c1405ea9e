#!/usr/bin/env bash
# Keeps what a release states of itself, and a signed report and a signed protocol document of each example study, and signed notices, made by it: once a version, never
# again. Later versions are held to them. Run it on the commit that takes a version without a hyphen.
set -euo pipefail
cd "$(dirname "$0")/.."
version=$(sed -n 's/.*<Version>\(.*\)<\/Version>.*/\1/p' Directory.Build.props)
case "$version" in *-*) echo "$version is a version in development."; exit 1 ;; esac
kept=tests/ReferenceData/releases/$version
if [ -e "$kept" ]; then echo "$kept exists and is never made again."; exit 1; fi

UPDATE_GOLDEN=1 dotnet run --project tests/StabilityStudy.Pipeline.Tests -- -method '*A_release_keeps_its_form*'
dotnet build src/StabilityStudy.Cli -v q
run() { dotnet src/StabilityStudy.Cli/bin/Debug/net10.0/stability-study.dll "$@"; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$kept/trust"
declare -A people=([author]="Lab Scientist One" [reviewer]="Lab Scientist Two" [approver]="Medical Director One")
declare -A keys=([author]=lab-scientist-one [reviewer]=lab-scientist-two [approver]=medical-director-one)
for role in author reviewer approver; do
    run trial-certificate "$work/keys" --name "${people[$role]}"
done

# sign_all DOCUMENT KEPT DECISION ROLE...: everybody signs; the approver with the decision, where there is one.
sign_all() {
    local document=$1 signed=$2 decides=$3 role decision target
    shift 3
    for role in "$@"; do
        decision=()
        [ "$role" = approver ] && [ -n "$decides" ] && decision=(--decision "$decides")
        target=()
        [ "$document" = "$signed" ] || target=(-o "$signed")
        run sign "$document" --role "$role" --key "$work/keys/${keys[$role]}.p12" \
            --passphrase-file "$work/keys/${keys[$role]}.passphrase" "${decision[@]}" "${target[@]}" >/dev/null
        document=$signed
    done
}

for protocol in example-studies/*/protocol.toml; do
    study=$(dirname "$protocol")
    name=$(basename "$study")
    cp -r "$study" "$work/$name"
    roles=()
    for role in author reviewer approver; do
        if grep -q "role = \"$role\"" "$protocol"; then roles+=("$role"); fi
    done
    run plan "$work/$name" --document "$work/$name/out/protocol.pdf" >/dev/null
    sign_all "$work/$name/out/protocol.pdf" "$kept/$name.protocol.pdf" "" author approver
    run report "$work/$name" >/dev/null
    sign_all "$work/$name/out/report.pdf" "$kept/$name.pdf" approve "${roles[@]}"
done
# Notices about one of the reports, and about a study that is ended.
name=small-paired-sheet
by=(--by "${people[approver]}" --reason "kept for later versions")
run withdraw "$kept/$name.pdf" "${by[@]}" --from 2030-01-01 -o "$kept/$name.withdrawn.pdf" >/dev/null
cp -r "example-studies/$name" "$work/ended"
run end "$work/ended" "${by[@]}" >/dev/null
cp "$work/ended/ended.pdf" "$kept/$name.ended.pdf"
for notice in withdrawn ended; do
    sign_all "$kept/$name.$notice.pdf" "$kept/$name.$notice.pdf" "" approver
done
cp "$work"/keys/*.pem "$kept/trust/" 2>/dev/null || cp "$work"/keys/*.crt "$kept/trust/"
# The program draws the study of the newest kept report to prove itself.
UPDATE_GOLDEN=1 dotnet run --project tests/StabilityStudy.Pipeline.Tests -- -method '*The_report_is_drawn_with_the_kept_bytes*'
echo "Kept: $kept. The next commit takes a new version in development."
