#!/bin/sh
# Lives from a log at 1 kHz in one run: samples a minute through the six members of four corners, memory against the length of the
# log, and the ratio to a vectorised numpy program of the same work on the same file.
#
#   run.sh [ROWS]    ROWS of the file that both read, 1000000 unless given
#
# Run it on a machine with nothing else to do. Where there is other work the processor times still say something, and the clock does
# not: both are printed, with the load of the machine. Every figure is the best of its runs.
set -eu
cd "$(dirname "$0")/../.."
rows=${1:-1000000}
python=python3
$python -c 'import numpy, yaml' 2>/dev/null || python=/usr/bin/python3
$python -c 'import numpy, yaml' || { echo "run.sh: python3 with numpy and yaml is needed" >&2; exit 1; }
cores=$(nproc) # before the next line, which nproc heeds
export OPENBLAS_NUM_THREADS=1 OMP_NUM_THREADS=1
tmp=$(mktemp -d)
trap 'rm -rf "$tmp"' EXIT
go test -c -o "$tmp/duty.test" .
SIXLINK_DAY="$tmp/day.csv,$rows" "$tmp/duty.test" -test.run WriteDay >/dev/null
# best METRIC most|least FILE
best() { awk -v m="$1" -v w="$2" '{for (i = 1; i < NF; i++) if ($(i+1) == m && (!seen++ || (w == "most" ? $i > x : $i < x))) x = $i} END {print x}' "$3"; }
field() { sed -n "s/.*\"$1\": \([-+.e0-9]*\).*/\1/p" "$2"; }

echo "$(uname -m), $cores cores, $(go version | cut -d' ' -f3), numpy $($python -c 'import numpy; print(numpy.__version__)')"
echo "load before: $(uptime | sed 's/.*average: //')"
SIXLINK_LOG="$tmp/day.csv" "$tmp/duty.test" -test.run NONE -test.bench 'History/file$' -test.cpu 1 -test.benchtime 1x -test.count 4 >"$tmp/one"
SIXLINK_LOG="$tmp/day.csv" "$tmp/duty.test" -test.run NONE -test.bench 'History/file$' -test.cpu "$cores" -test.benchtime 1x -test.count 4 >"$tmp/many"
SIXLINK_LOG="$tmp/day.csv" "$tmp/duty.test" -test.run NONE -test.bench 'History/file_and' -test.cpu "$cores" -test.benchtime 1x -test.count 4 >"$tmp/thick"
for chunk in 500000 1000000 4000000; do
	for run in 1 2; do $python testdata/bench/numpy_life.py ../../examples/hillclimb-pushrod-duty.yaml "$tmp/day.csv" $chunk; done
done >"$tmp/numpy" 2>"$tmp/warnings" || { cat "$tmp/warnings" >&2; exit 1; }
go1=$(best Msamples/min most "$tmp/one") gocpu=$(best cpu-ns/sample least "$tmp/one")
py=$(field per_minute "$tmp/numpy" | sort -gr | head -1) pycpu=$(field cpu "$tmp/numpy" | sort -g | head -1)
echo "file of $rows rows: $go1 million samples/min on one core, $(best Msamples/min most "$tmp/many") on $cores ($(best Msamples/min most "$tmp/thick") with thicker tubes beside); $gocpu ns of processor time a sample"
awk -v a="$go1" -v b="$py" -v c="$gocpu" -v d="$pycpu" -v n="$rows" \
	'BEGIN {printf "numpy: %.2f million samples/min on one core; %.0f ns of processor time a sample\n  sixlink is %.1f times as fast on one core by the clock, %.1f times by processor time\n", b/1e6, d/n*1e9, a/(b/1e6), d/n*1e9/c}'
echo
echo "logs made as they are read, $cores cores: rows, million samples/min, peak memory"
for n in 100000 1000000 10000000; do
	"$tmp/duty.test" -test.run NONE -test.bench "History/$n\$" -test.benchtime 1x >"$tmp/n"
	echo "  $n: $(best Msamples/min most "$tmp/n"), $(best peak-MB least "$tmp/n") MB"
done
echo "load after: $(uptime | sed 's/.*average: //')"
