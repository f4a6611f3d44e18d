# Power of each of several changes against one baseline under Dunnett's adjustment, for SeveralChangesSizeTest. R 4.2.2, mvtnorm 1.1-3.
library(mvtnorm)
set.seed(1)
critical <- function(df, loadings) {
  correlation <- outer(loadings, loadings)
  diag(correlation) <- 1
  inside <- function(c) pmvt(rep(-c, length(loadings)), rep(c, length(loadings)), df = df, corr = correlation, algorithm = GenzBretz(maxpts = 5e6, abseps = 1e-9))
  uniroot(function(c) inside(c) - 0.95, c(1.5, 8), tol = 1e-10)$root
}
power <- function(baseline, against, df, sd, effect = log(1.03)) {
  c <- critical(df, sqrt(against / (against + baseline)))
  ncp <- effect / (sd * sqrt(1 / baseline + 1 / min(against)))
  1 - pt(c, df, ncp) + pt(-c, df, ncp)
}
sd <- sqrt(log1p(0.015^2))
for (n in c(6, 7, 8)) cat(n, "trials each:", format(power(n, c(n, n), 3 * n - 3, sd), digits = 10), "\n")
cat("8, 6 and 5 trials:", format(power(8, c(6, 5), 16, sd), digits = 10), "\n")
cat("5 sessions each, 4 trials:", format(power(5, c(5, 5), 12, sqrt(log1p(0.008^2) + log1p(0.015^2) / 4)), digits = 10), "\n")
cat("4 sessions with 2 trials of each:", format(power(8, c(8, 8), 18, sd), digits = 10), "\n")

# The cheapest of all layouts with 2 to 8 sessions of the baseline, as many of each of two changes, and 1 to 4 trials in each of two conditions: noise
# 1.5 % and 0.8 %; a session of 6 min a trial, 25 min before the first (35 min: changed); one of the changes outdoors, where a minute counts three and
# 5 h are the most. For CheapestOfSeveralTest.
best <- NULL
for (k0 in 2:8) for (k1 in 2:8) {
  c <- critical(k0 + 2 * k1 - 3, rep(sqrt(k1 / (k1 + k0)), 2))
  for (r in 1:4) {
    outdoors <- k1 * (35 + 12 * r)
    if (outdoors > 300) next
    price <- k0 * (25 + 12 * r) + 2 * k1 * (35 + 12 * r) + 2 * outdoors
    ncp <- log(1.03) / sqrt((log1p(0.008^2) + log1p(0.015^2) / (2 * r)) * (1 / k0 + 1 / k1))
    reached <- 1 - pt(c, k0 + 2 * k1 - 3, ncp) + pt(-c, k0 + 2 * k1 - 3, ncp)
    if (reached >= 0.9) best <- rbind(best, data.frame(k0, k1, r, price, reached))
  }
}
print(head(best[order(best$price), ], 4), digits = 10)
