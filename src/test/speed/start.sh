#!/usr/bin/env bash
# Whole-process times in one run on one machine: coldproof against an empty Java program, Rscript and Python with scipy.stats.
# Usage: src/test/speed/start.sh [RUNS]   (after mvn -DskipTests package and mvn test-compile; a study of 10,000 trials is made first)
set -euo pipefail
cd "$(dirname "$0")/../../.."
runs=${1:-21}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
coldproof=$PWD/target/coldproof/bin/coldproof
printf 'public class Hello { public static void main(String[] words) { System.out.println("hello"); } }\n' > "$work/Hello.java"
javac -d "$work" "$work/Hello.java"
classes=target/test-classes:target/classes:$(find target/coldproof/lib -name '*.jar' ! -name coldproof.jar | paste -sd:)
java -cp "$classes" coldproof.job.speed.LargeStudy "$work/large" 500
"$coldproof" plan new --from chilled-air --study "$work/small" > /dev/null
"$coldproof" plan freeze --study "$work/small" > /dev/null
mkdir "$work/none"

# The median of so many runs, wall and processor milliseconds.
measure() {
  local name=$1
  shift
  python3 - "$runs" "$name" "$@" <<'PYTHON'
import resource, subprocess, sys, time
runs, name, command = int(sys.argv[1]), sys.argv[2], sys.argv[3:]
wall, cpu = [], []
for _ in range(runs):
    before, start = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    subprocess.run(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    wall.append(time.perf_counter() - start)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
middle = lambda values: 1000 * sorted(values)[len(values) // 2]
print(f"{name:44s} {middle(wall):7.0f} ms wall {middle(cpu):7.0f} ms processor")
PYTHON
}

# The same from the call to the first time a text stands on a real terminal; wall time alone, because the program then goes on.
until_shown() {
  local name=$1 text=$2
  shift 2
  python3 - "$runs" "$name" "$text" "$@" <<'PYTHON'
import fcntl, os, pty, select, signal, struct, sys, termios, time
runs, name, text, command = int(sys.argv[1]), sys.argv[2], sys.argv[3].encode(), sys.argv[4:]
wall = []
for _ in range(runs):
    start = time.perf_counter()
    child, terminal = pty.fork()
    if child == 0:
        os.environ["TERM"] = "xterm-256color"
        os.execvp(command[0], command)
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    seen = b""
    while text not in seen:
        if not select.select([terminal], [], [], 10)[0]:
            sys.exit(f"{name}: never showed {text!r}")
        seen += os.read(terminal, 65536)
    wall.append(time.perf_counter() - start)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    os.close(terminal)
print(f"{name:44s} {1000 * sorted(wall)[len(wall) // 2]:7.0f} ms wall")
PYTHON
}

measure "an empty Java program" java -cp "$work" Hello
measure "coldproof --version" "$coldproof" --version
measure "coldproof runs, sessions" "$coldproof" runs --layout sessions --effect 3% --noise 1.5% --session-noise 0.8%
measure "coldproof to its prompt, and quit" "$coldproof" --study "$work/small"
until_shown "coldproof to its prompt at a terminal" "coldproof> " "$coldproof" --study "$work/small"
until_shown "the same where no study is" "coldproof> " "$coldproof" --study "$work/none"
measure "coldproof schedule, 32 trials" "$coldproof" schedule --study "$work/small"
measure "coldproof to its prompt, study of 10,000 trials" "$coldproof" --study "$work/large"
measure "coldproof plan show, small study" "$coldproof" plan show --study "$work/small"
measure "coldproof plan show, study of 10,000 trials" "$coldproof" plan show --study "$work/large"
measure "coldproof journal check, small study" "$coldproof" journal check --study "$work/small"
measure "coldproof journal check, 10,000 trials" "$coldproof" journal check --study "$work/large"
if command -v Rscript > /dev/null; then
  measure "Rscript -e 1" Rscript -e 1
fi
if python3 -c 'import scipy' 2> /dev/null; then
  measure "python importing scipy.stats" python3 -c 'import scipy.stats'
fi
