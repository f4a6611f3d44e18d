#!/bin/sh
# Times the statistics beside R (coin, lme4, lmerTest) and SciPy, all in one run on one machine, and prints the ratios.
# Needs: mvn, java, Rscript with coin and lmerTest, python3 with SciPy. Run from the project's root after mvn test-compile.
set -eu
here=$(dirname "$0")
root=$(cd "$here/../../.." && pwd)
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
library=$(find "${HOME}/.m2/repository/org/apache/commons/commons-math3" -name 'commons-math3-3.6.1.jar' | head -n 1)
java -XX:+UseSerialGC -cp "$root/target/classes:$root/target/test-classes:$library" coldproof.benchmark.Rates > "$out/ours"
export OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1
Rscript "$here/statistics.R" > "$out/r"
python3 "$here/statistics.py" > "$out/scipy"
line() { # title, our task, their file, their task, wanted ratio
    awk -F '\t' -v title="$1" -v ours="$2" -v theirs="$4" -v wanted="$5" -v file="$out/ours" '
        FILENAME == file && $1 == ours { a = $2; x = $3 } FILENAME != file && $1 == theirs { b = $2; y = $3 }
        END { printf "| %s | %.4g | %.4g | %.0f | %s | %s | %s |\n", title, a, b, a / b, wanted, x, y }' "$out/ours" "$out/$3"
}
echo "| task | ours, a second | theirs, a second | ratio | wanted | our result | their result |"
echo "|---|---|---|---|---|---|---|"
line "randomisation, 20 + 20, 10^6 draws; SciPy permutation_test, vectorised" randomisation scipy randomisation 20
line "the same; R coin, approximate" randomisation r randomisation 4
line "all 1.4 x 10^11 orders exactly, against SciPy's 10^6 draws" exact-randomisation scipy randomisation -
line "split plot, 8 x 6 trials, Satterthwaite df; R lme4 + lmerTest" satterthwaite r satterthwaite 1000
line "the same, Kenward-Roger df; R lmerTest + pbkrtest" kenward-roger r kenward-roger 1000
line "trials for a wanted power; R power.t.test" size r size 50
