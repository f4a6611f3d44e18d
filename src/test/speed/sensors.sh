#!/bin/sh
# What sampling once a second takes of one processor: nothing sampled, the kernel's files of this machine, those of a laptop with 28 of them
# (made up, in a folder), and the library of system information asked for everything. Processor time of the whole process, in seconds an hour.
#
#   src/test/speed/sensors.sh [SECONDS]      (default: 300 each)
#
# Needs the packaged program and the compiled tests: mvn -DskipTests package.
set -eu
seconds=${1:-300}
here=$(cd "$(dirname "$0")/../../.." && pwd)
laptop=$(mktemp -d)
trap 'rm -rf "$laptop"' EXIT INT TERM
put() {
  mkdir -p "$laptop/$(dirname "$1")"
  echo "$2" > "$laptop/$1"
}
put sys/class/hwmon/hwmon0/name coretemp
for core in 1 2 3 4 5 6 7 8 9; do put sys/class/hwmon/hwmon0/temp${core}_input 61000; done
put sys/class/hwmon/hwmon1/name board
for place in 1 2 3 4; do put sys/class/hwmon/hwmon1/temp${place}_input 38000; done
for fan in 1 2; do put sys/class/hwmon/hwmon1/fan${fan}_input 3100; done
for policy in 0 1 2 3 4 5 6 7; do put sys/devices/system/cpu/cpufreq/policy$policy/scaling_cur_freq 2900000; done
put sys/class/powercap/intel-rapl:0/name package-0
put sys/class/powercap/intel-rapl:0/energy_uj 1000000
put sys/class/powercap/intel-rapl:0/max_energy_range_uj 262143328850
put sys/class/power_supply/BAT0/type Battery
put sys/class/power_supply/BAT0/status Discharging
put sys/class/power_supply/BAT0/capacity 80
put sys/class/power_supply/BAT0/temp 251
put sys/class/power_supply/BAT0/power_now 14000000
mkdir -p "$laptop/proc"
cp /proc/stat "$laptop/proc/stat"

cost() {
  java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -cp "$here/target/test-classes:$here/target/classes:$here/target/coldproof/lib/sensors/*" \
    coldproof.machine.sensors.SamplingCost "$@"
}
cost nothing "$seconds" /
cost files "$seconds" /
cost files "$seconds" "$laptop"
cost library "$seconds" /
