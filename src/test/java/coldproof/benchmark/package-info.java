/** Speed, measured on demand: {@code mvn -B test -Pbenchmark} for the kernels, {@code src/test/speed/statistics.sh} beside R and SciPy. */
package coldproof.benchmark;
