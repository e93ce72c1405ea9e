#!/usr/bin/env bash
# What a release ships, made twice and tried as those do who install it. Part of the long proofs; needs root, debootstrap and the cross compiler
# for Arm (gcc-aarch64-linux-gnu, libc6-dev-arm64-cross); with qemu-user-static the program for Arm is run too.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
bare=$work/bare
cleanup() {
    mountpoint -q "$bare/proc" && umount "$bare/proc"
    rm -rf "$work"
}
trap cleanup EXIT

# Both from one commit, whatever is committed meanwhile.
commit=$(git rev-parse HEAD)
for copy in one a-longer-name/two; do
    git clone -q . "$work/$copy"
    git -C "$work/$copy" checkout -q "$commit"
    "$work/$copy/.ci/packages" "$work/out-${copy##*/}" >"$work/log" || { cat "$work/log"; exit 1; }
done
diff -r "$work/out-one" "$work/out-two"
echo "packages: $(wc -l <"$work/out-one/SHA256SUMS") files, the same bytes from two folders"

# as_user PROGRAM EXAMPLES: the example is reported and a released report verified.
cat >"$work/as-user" <<'EOF'
set -eu
program=$1 examples=$2 signed=$3
cp -r "$examples/aptt-room-temperature" study
"$program" report study >report.txt
grep -q "Supported to 6 h" report.txt
"$program" prove >prove.txt
"$program" verify "$signed/small-paired-sheet.pdf" --trust "$signed/trust" >verify.txt || [ $? -eq 5 ]
grep -q HOLDS verify.txt
sha256sum study/out/report.pdf
EOF
signed=$(ls -d tests/ReferenceData/releases/* | tail -n 1)

debootstrap --variant=minbase bookworm "$bare" >"$work/log" 2>&1 || { cat "$work/log"; exit 1; }
mount -t proc proc "$bare/proc"
cp "$work"/out-one/*_amd64.deb "$work/as-user" "$bare/srv/"
cp -r "$signed" "$bare/srv/signed"
chroot "$bare" sh -c 'apt-get update -qq && apt-get install -y -qq /srv/*_amd64.deb' >"$work/log" 2>&1 || { cat "$work/log"; exit 1; }
chroot "$bare" sh -c 'command -v dotnet' && { echo "There is an SDK in the bare system."; exit 1; }
.ci/links "$bare/usr/share/doc/stability-study"
installed=$(chroot "$bare" sh -c 'cd /srv && sh as-user stability-study /usr/share/doc/stability-study/examples /srv/signed')
chroot "$bare" sh -c 'apt-get remove -y -qq stability-study' >"$work/log" 2>&1
if [ -n "$(chroot "$bare" find / -xdev -path '*stability-study*' -not -path '/proc/*' -not -path '/srv/*' -not -path '/var/*' -not -path '/usr/share/doc/*')" ]; then
    echo "The removed package leaves files."
    exit 1
fi
echo "packages: the Debian package, installed in a bare Debian and removed: $installed"

dotnet tool install StabilityStudy --prerelease --source "$work/out-one" --tool-path "$work/tools" >"$work/log" 2>&1 || { cat "$work/log"; exit 1; }
mkdir "$work/try-tool"
here=$PWD
tool=$(cd "$work/try-tool" && sh "$work/as-user" "$work/tools/stability-study" "$work/one/example-studies" "$here/$signed")
[ "$tool" = "$installed" ] || { echo "The tool package gives another report: $tool"; exit 1; }
dotnet tool uninstall StabilityStudy --tool-path "$work/tools" >/dev/null
echo "packages: the tool package, installed from a folder and uninstalled: the same report"

if command -v qemu-aarch64-static >/dev/null; then
    # Its libraries come from the packages of that platform. Figures are rounded further than two processors differ.
    chroot "$bare" sh -c 'dpkg --add-architecture arm64 && apt-get update -qq && mkdir /arm && cd /arm &&
        apt-get download -qq libc6:arm64 libicu72:arm64 libssl3:arm64 libstdc++6:arm64 libgcc-s1:arm64 zlib1g:arm64 tzdata &&
        for package in *.deb; do dpkg -x "$package" root; done' >"$work/log" 2>&1 || { cat "$work/log"; exit 1; }
    mkdir "$work/arm" "$work/x64" "$work/try-arm"
    tar -C "$work/arm" --strip-components=1 -xf "$work"/out-one/*linux-arm64.tar.gz
    tar -C "$work/x64" --strip-components=1 -xf "$work"/out-one/*linux-x64.tar.gz
    printf '#!/bin/sh\nexec qemu-aarch64-static -L %s/arm/root %s/arm/stability-study "$@"\n' "$bare" "$work" >"$work/arm-program"
    chmod +x "$work/arm-program"
    (
        cd "$work/try-arm"
        arm=$(sh "$work/as-user" "$work/arm-program" "$work/one/example-studies" "$here/$signed")
        [ "$arm" = "$installed" ] || { echo "The program for Arm gives another report: $arm"; exit 1; }
        cmp report.txt "$work/try-tool/report.txt"
        "$work/arm-program" trial-certificate keys --name "Lab Scientist One" >/dev/null
        "$work/arm-program" sign study/out/report.pdf --role author --key keys/lab-scientist-one.p12 \
            --passphrase-file keys/lab-scientist-one.passphrase -o signed.pdf >/dev/null
        "$work/x64/stability-study" verify signed.pdf --trust keys >verify.txt || [ $? -eq 5 ]
        grep -q "The pages were drawn again and are the same" verify.txt
    )
    echo "packages: the program for Arm, under emulation: the same report; one that it drew and signed is drawn again byte for byte on x64"
fi
