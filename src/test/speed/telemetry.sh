#!/bin/sh
# How fast a large log is read: rows a second and peak memory of `coldproof trace` and of general-purpose readers on the same file.
#
#   src/test/speed/telemetry.sh [MEGABYTES] [FOLDER]      (default: 1000 MB, /tmp)
#
# Needs the packaged program (mvn -DskipTests package) and python3; uses R (base, data.table) and the Python packages pandas, polars and
# duckdb where they are installed. Each reader reads all twelve columns and gives the mean of package power, so that nothing can be
# skipped; coldproof does its whole analysis. The least of three runs counts. Processors differ: only the ratios of one run mean anything;
# on a machine that does other work, those of processor seconds. A ratio is how many times as much as coldproof a reader takes.
set -eu
megabytes=${1:-1000}
folder=${2:-/tmp}
here=$(cd "$(dirname "$0")/../../.." && pwd)
log=$folder/coldproof-speed-$megabytes.csv
part=$folder/coldproof-speed-part.csv

if [ ! -f "$log" ]; then
  python3 - "$log" "$megabytes" <<'PY'
import random, sys
random.seed(7)
rows = []
for i in range(20000):
    rows.append("%.2f,%.2f,%.1f,%.1f,%.3f,%.3f,%d,%d,%.1f,%d,%.2f" % (
        80 + random.gauss(0, 1), 78 + random.gauss(0, 1), 40 + random.gauss(0, .2), 33 + random.gauss(0, .2), 28 + random.gauss(0, .1),
        36 + random.gauss(0, .1), 3200 + random.gauss(0, 20), 2400 + random.gauss(0, 9), 99.5 + random.random() / 2, 95, 21 + random.gauss(0, .1)))
want = int(sys.argv[2]) * 10**6
with open(sys.argv[1], "w") as out:
    size = out.write("time_s,die_temp_1_c,die_temp_2_c,board_temp_c,skin_temp_c,package_power_w,system_power_w,clock_mhz,fan_rpm,utilisation_pct,battery_charge_pct,ambient_temp_c\n")
    t = 0
    while size < want:
        chunk = "".join("%d,%s\n" % (t + i, rows[i]) for i in range(len(rows)))
        size += out.write(chunk)
        t += len(rows)
PY
fi
rows=$(($(wc -l < "$log") - 1))
bytes=$(wc -c < "$log")
cat "$log" > /dev/null # into the page cache: this is about reading text, not about the drive
head -n $((rows / 20)) "$log" > "$part"
echo "$rows rows, $bytes bytes; $(nproc) processors"
echo "seconds    cpu s  rows/cpu s  peak MB  ratio  cpu ratio  reader"
ours=$folder/coldproof-speed-ours
rm -f "$ours"

measure() { # name, rows, command...
  name=$1; count=$2; shift 2
  python3 - "$name" "$count" "$ours" "$rows" "$@" <<'PY'
import os, subprocess, sys, time
name, count, ours, all_rows, command = sys.argv[1], int(sys.argv[2]), sys.argv[3], int(sys.argv[4]), sys.argv[5:]
seconds = cpu = float("inf")
peak = 0
for _ in range(3):
    began = time.time()
    run = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(run.pid, 0)
    if status:
        print("      -        -  -                -      -          -      -          -  %s: failed" % name, flush=True)
        sys.exit()
    seconds = min(seconds, time.time() - began)
    cpu = min(cpu, used.ru_utime + used.ru_stime)
    peak = max(peak, used.ru_maxrss / 1024)
if not os.path.exists(ours):
    open(ours, "w").write("%r %r" % (seconds, cpu))
first = [float(number) for number in open(ours).read().split()]
scale = all_rows / count
print("%7.2f  %7.2f  %-10d  %7.0f  %5.2f  %9.2f  %s" % (seconds, cpu, count / cpu, peak, scale * seconds / first[0], scale * cpu / first[1], name), flush=True)
PY
}

measure "coldproof trace (head, all columns, phases, levels)" "$rows" "$here/target/coldproof/bin/coldproof" trace --json "$log"
measure "cat (no parsing: the bound)" "$rows" cat "$log"
java "$here/src/test/speed/RawLimits.java" "$log"
measure "python csv module, on a twentieth" $((rows / 20)) python3 -c "
import csv
with open('$part') as f:
    r = csv.reader(f); next(r); s = 0.0; n = 0
    for row in r:
        v = [float(c) for c in row]; s += v[5]; n += 1
print(s / n)"
for package in pandas polars duckdb; do
  python3 -c "import $package" 2>/dev/null || { echo "      -        -  -                -      -          -  $package: not installed"; continue; }
  case $package in
    pandas) measure "pandas read_csv" "$rows" python3 -c "import pandas; print(pandas.read_csv('$log')['package_power_w'].mean())" ;;
    polars) measure "polars read_csv (all processors)" "$rows" python3 -c "import polars; print(polars.read_csv('$log')['package_power_w'].mean())"
            POLARS_MAX_THREADS=1 measure "polars read_csv (one thread)" "$rows" python3 -c "import polars; print(polars.read_csv('$log')['package_power_w'].mean())" ;;
    duckdb) measure "duckdb into a table (all processors)" "$rows" python3 -c "
import duckdb
c = duckdb.connect(); c.execute(\"create table t as select * from read_csv('$log')\"); print(c.execute('select avg(package_power_w) from t').fetchone())"
            measure "duckdb into a table (one thread)" "$rows" python3 -c "
import duckdb
c = duckdb.connect(); c.execute('set threads=1'); c.execute(\"create table t as select * from read_csv('$log')\"); print(c.execute('select avg(package_power_w) from t').fetchone())" ;;
  esac
done
if command -v Rscript > /dev/null; then
  measure "R read.csv, on a twentieth" $((rows / 20)) Rscript -e "print(mean(read.csv('$part')\$package_power_w))"
  if Rscript -e 'quit(status = !requireNamespace("data.table", quietly = TRUE))'; then
    measure "R data.table fread (all processors)" "$rows" Rscript -e "print(mean(data.table::fread('$log', showProgress = FALSE)\$package_power_w))"
    measure "R data.table fread (one thread)" "$rows" Rscript -e "data.table::setDTthreads(1); print(mean(data.table::fread('$log', showProgress = FALSE)\$package_power_w))"
  else
    echo "      -        -  -                -      -          -  R data.table: not installed"
  fi
fi
rm -f "$part" "$ours"
