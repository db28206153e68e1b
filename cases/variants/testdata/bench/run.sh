#!/bin/sh
# The benchmarks of variants in one run, with their ratios: the engine against a vectorised numpy program of the same work, the inner
# solve against the floating-point limit of this machine, a sweep of the travel against a run, time and memory against the number of variants.
#
#   run.sh [MOST]    MOST: the largest number of variants for the last part, 10000000 unless given
#
# Run it on a machine with nothing else to do. Where there is other work the processor times still say something, and the clock does not:
# both are printed, with the load of the machine. numpy has one thread of its libraries and one process for each core; of its chunks the
# best is taken. Every figure is the best of its runs.
set -eu
cd "$(dirname "$0")/../.."
most=${1:-10000000}
car=../../examples/hillclimb-pushrod.yaml
python=python3
$python -c 'import numpy, yaml' 2>/dev/null || python=/usr/bin/python3
$python -c 'import numpy, yaml' || { echo "run.sh: python3 with numpy and yaml is needed" >&2; exit 1; }
cores=$(nproc) # before the next line, which nproc heeds
export OPENBLAS_NUM_THREADS=1 OMP_NUM_THREADS=1
tmp=$(mktemp -d)
trap 'rm -rf "$tmp"' EXIT
go test -c -o "$tmp/variants.test" .
go test -c -o "$tmp/loads.test" ../../loads

# best METRIC FILE: the least value of a metric of the benchmarks in a file
best() { awk -v m="$1" '{for (i = 1; i < NF; i++) if ($(i+1) == m && (!seen++ || $i < x)) x = $i} END {print x}' "$2"; }
# field NAME FILE: the values of a field of the JSON lines in a file
field() { sed -n "s/.*\"$1\": \([-+.e0-9]*\).*/\1/p" "$2"; }
# numpy MODE PROCESSES FILE: the best of three runs and chunks on so many processes; lines of "variants/s of all, processor ns a variant"
numpy() {
	for chunk in 100 250 500; do
		for run in 1 2 3; do
			: >"$tmp/lines"
			pids=
			for p in $(seq "$2"); do
				$python testdata/bench/numpy_variants.py $car --time 10000 --chunk $chunk $1 >"$tmp/line$p" & pids="$pids $!"
			done
			for pid in $pids; do wait "$pid"; done
			for p in $(seq "$2"); do cat "$tmp/line$p" >>"$tmp/lines"; done
			echo "$(field per_second "$tmp/lines" | awk '{s += $1} END {print s}') $(field cpu_ns "$tmp/lines" | sort -g | head -1)"
		done
	done >"$3"
}
fastest() { sort -gr "$1" | head -1 | cut -d' ' -f1; }
least() { cut -d' ' -f2 "$1" | sort -g | head -1; }

echo "$(uname -m), $cores cores, $(go version | cut -d' ' -f3), numpy $($python -c 'import numpy; print(numpy.__version__)')"
echo "load before: $(uptime | sed 's/.*average: //')"

"$tmp/variants.test" -test.run NONE -test.bench 'Evaluate/.*pushrod' -test.cpu 1 -test.benchtime 0.5s -test.count 6 >"$tmp/one"
"$tmp/variants.test" -test.run NONE -test.bench 'EvaluateParallel/.*pushrod' -test.cpu "$cores" -test.benchtime 0.5s -test.count 6 >"$tmp/many"
for mode in "" --shortcuts; do
	numpy "$mode" 1 "$tmp/numpy1$mode"
	numpy "$mode" "$cores" "$tmp/numpy$mode"
done
go1=$(awk -v t="$(best ns/op "$tmp/one")" 'BEGIN {print 1e9/t}')
gon=$(awk -v t="$(best ns/op "$tmp/many")" 'BEGIN {print 1e9/t}')
gocpu=$(best cpu-ns/variant "$tmp/one")
echo
echo "engine: $(printf %.0f "$go1") variants/s on one core, $(printf %.0f "$gon") on $cores; $(printf %.0f "$gocpu") ns of processor time each; allocations each: $(best allocs/op "$tmp/one")"
for mode in "" --shortcuts; do
	n1=$(fastest "$tmp/numpy1$mode") nn=$(fastest "$tmp/numpy$mode") ncpu=$(least "$tmp/numpy1$mode")
	echo "numpy${mode:+ with the shortcuts of the engine}: $(printf %.0f "$n1") variants/s on one core, $(printf %.0f "$nn") on $cores; $(printf %.0f "$ncpu") ns of processor time each"
	awk -v a="$go1" -v b="$n1" -v c="$gon" -v d="$nn" -v e="$ncpu" -v f="$gocpu" -v n="$cores" \
		'BEGIN {printf "  the engine is %.1f times as fast on one core, %.1f times on %d; %.1f times by processor time\n", a/b, c/d, n, e/f}'
done

"$tmp/loads.test" -test.run NONE -test.bench 'MultiplySubtract|Invert|Inner' -test.cpu 1 -test.count 5 >"$tmp/inner"
echo
for name in MultiplySubtract InnerInverse Invert InnerFactors; do
	grep "^Benchmark$name" "$tmp/inner" >"$tmp/$name"
done
limit=$(best ns/multiply-subtract "$tmp/MultiplySubtract")
echo "floating-point limit: $limit ns a scalar multiply-subtract"
for row in "InnerInverse:inverse and a product for each of 32 loads, as the engine does" "Invert:the inverse alone" "InnerFactors:triangular factors and 32 substitutions"; do
	x=$(best ns/multiply-subtract "$tmp/${row%%:*}")
	awk -v x="$x" -v l="$limit" -v w="${row#*:}" 'BEGIN {printf "  %s: %.3f ns, %.2f times the limit\n", w, x, x/l}'
done

echo
"$tmp/variants.test" -test.run NONE -test.bench 'TravelSweep' -test.cpu 1 -test.benchtime 1s -test.count 3 >"$tmp/travel"
echo "201 positions of the four corners under all load cases, statics and checks: $(best ms/sweep "$tmp/travel") ms, $(best runs "$tmp/travel") times a run of the car ($(best ms/run "$tmp/travel") ms)"

echo
echo "variants on $cores cores: ns of the clock each, ns of processor time each, peak memory"
n=10000
while [ "$n" -le "$most" ]; do
	"$tmp/variants.test" -test.run NONE -test.bench "Variants/^$n\$" -test.benchtime 1x -test.count "$([ "$n" -lt 1000000 ] && echo 20 || echo 3)" >"$tmp/n"
	echo "  $n: $(best ns/variant "$tmp/n") ns, $(best cpu-ns/variant "$tmp/n") ns, $(best peak-MB "$tmp/n") MB"
	n=$((n * 10))
done
echo "load after: $(uptime | sed 's/.*average: //')"
