# Draws random inputs and lets R answer them; the answers are frozen in src/test/resources/coldproof/stats/oracle/ and RandomInputsTest compares.
# Needs: R with mvtnorm, lme4, lmerTest, pbkrtest and coin (on Debian: r-base-core r-cran-mvtnorm r-cran-lmertest r-cran-pbkrtest r-cran-coin).
# Run from the project's root: Rscript src/test/r/random-inputs.R [seed]
# Another seed gives other inputs: mvn test -Dtest=RandomInputsTest then compares those.

suppressPackageStartupMessages({library(mvtnorm); library(lme4); library(lmerTest); library(pbkrtest); library(coin)})
arguments <- commandArgs(trailingOnly = TRUE)
seed <- if (length(arguments) > 0) as.integer(arguments[1]) else 20260211L
set.seed(seed)
folder <- "src/test/resources/coldproof/stats/oracle"
versions <- paste(c(R.version.string, sapply(c("mvtnorm", "lme4", "lmerTest", "pbkrtest", "coin"),
    function(p) paste(p, packageVersion(p)))), collapse = ", ")
digits <- function(x) format(x, digits = 17, trim = TRUE, scientific = TRUE)

# One row: what is asked, up to six numbers, the answer, and how far R itself can be trusted (relative, or absolute where it says so).
rows <- list()
ask <- function(kind, numbers, answer, trust) {
  rows[[length(rows) + 1]] <<- c(kind, digits(c(numbers, rep(NA, 6 - length(numbers)))), digits(answer), digits(trust))
}
log_sd <- function(cv) sqrt(log1p((cv / 100)^2))

for (i in 1:25) { # R keeps absolute accuracy of about 1e-12 in a noncentral t, so the tails are left alone
  df <- exp(runif(1, 0, log(2000))); ncp <- runif(1, -12, 30); t <- ncp + rnorm(1, 0, 1.5) * sqrt(1 + ncp^2 / (2 * df))
  p <- pt(t, df, ncp)
  if (p > 1e-3 && p < 0.999) ask("noncentral t", c(t, df, ncp), p, 1e-9)
}
for (i in 1:15) {
  df1 <- sample(1:8, 1); df2 <- exp(runif(1, log(2), log(500))); ncp <- exp(runif(1, -1, 4)); x <- (1 + ncp / df1) * exp(rnorm(1, 0, 0.5))
  p <- pf(x, df1, df2, ncp)
  if (p > 1e-3 && p < 0.999) ask("noncentral F", c(x, df1, df2, ncp), p, 1e-8)
}
for (i in 1:15) { # power of two groups, sizes by solving: percent, cv, n, level, sides
  percent <- runif(1, 0.5, 8); cv <- runif(1, 0.5, 4); n <- sample(2:40, 1); level <- runif(1, 0.01, 0.2); sides <- sample(1:2, 1)
  alternative <- if (sides == 2) "two.sided" else "one.sided"
  power <- power.t.test(n, log1p(percent / 100), log_sd(cv), level, alternative = alternative, strict = TRUE)$power
  ask("power of two groups", c(percent, cv, n, level, sides), power, 1e-9)
  pairs <- power.t.test(n, log1p(percent / 100), sqrt(2) * log_sd(cv), level, type = "paired", alternative = alternative, strict = TRUE)$power
  ask("power of pairs", c(percent, cv, n, level, sides), pairs, 1e-9)
  target <- runif(1, 0.5, 0.99)
  real <- tryCatch(power.t.test(NULL, log1p(percent / 100), log_sd(cv), level, target, alternative = alternative, strict = TRUE, tol = 1e-12)$n,
      error = function(e) NA)
  if (!is.na(real) && real > 2 && abs(real - round(real)) > 1e-6) ask("trials of each level", c(percent, cv, target, level, sides), ceiling(real), 0)
}
for (i in 1:10) { # whole sessions, unequal: percent, session cv, run cv, sessions of each, trials in each
  percent <- runif(1, 1, 8); b <- runif(1, 0, 2); w <- runif(1, 0.5, 3); k1 <- sample(2:8, 1); k2 <- sample(2:8, 1); r <- sample(1:6, 1)
  se <- sqrt((log_sd(b)^2 + log_sd(w)^2 / r) * (1 / k1 + 1 / k2)); df <- k1 + k2 - 2; critical <- qt(0.975, df); ncp <- log1p(percent / 100) / se
  if (ncp < 35) ask("power of sessions", c(percent, b, w, k1, k2, r), pt(critical, df, ncp, lower.tail = FALSE) + pt(-critical, df, ncp), 1e-8)
}
for (i in 1:10) { # two one-sided tests of two groups: margin percent, true percent, cv, n, level; the definition integrated over the noise
  margin <- runif(1, 1.5, 6); percent <- runif(1, -0.5, 0.5); cv <- runif(1, 0.5, 2); n <- sample(3:25, 1); level <- runif(1, 0.01, 0.1)
  se <- log_sd(cv) * sqrt(2 / n); df <- 2 * n - 2; critical <- qt(level, df, lower.tail = FALSE); m <- log1p(margin / 100); d <- log1p(percent / 100)
  top <- m / (critical * se) # beyond this noise nothing is shown
  f <- function(s) (pnorm((m - d) / se - critical * s) - pnorm((-m - d) / se + critical * s)) * 2 * df * s * dchisq(df * s^2, df)
  p <- integrate(f, 0, top, rel.tol = 1e-11, subdivisions = 2000)$value
  if (p > 1e-4) ask("power of sameness", c(margin, percent, cv, n, level), p, 1e-8)
}
for (i in 1:8) { # Dunnett: bound, df, loadings of up to four comparisons; deterministic seeds, quasi-random integration
  k <- sample(2:4, 1); loading <- sqrt(runif(k, 0.2, 0.8)); df <- sample(c(4, 7, 12, 25, 60), 1); bound <- runif(1, 1.5, 3.5)
  correlation <- outer(loading, loading); diag(correlation) <- 1
  p <- 1 - pmvt(-rep(bound, k), rep(bound, k), df = df, corr = correlation, algorithm = GenzBretz(maxpts = 5e6, abseps = 1e-7))
  ask("any of several beyond", c(bound, df, loading), as.numeric(p), 2e-5)
}
for (i in 1:6) { # three looks, symmetric bounds spent after O'Brien and Fleming: two fractions, which bound
  t <- c(sort(runif(2, 0.2, 0.9)), 1)
  if (t[2] - t[1] < 0.05) next
  spent <- 2 * (1 - pnorm(qnorm(1 - 0.0125) / sqrt(t))); z <- qnorm(1 - spent[1])
  correlation <- outer(t, t, function(a, b) sqrt(pmin(a, b) / pmax(a, b)))
  for (k in 2:3) {
    inside <- function(b) pmvnorm(-c(z, b), c(z, b), corr = correlation[1:k, 1:k], algorithm = Miwa(steps = 512))
    z <- c(z, uniroot(function(b) (1 - inside(b)) - 2 * spent[k], c(1, 6), tol = 1e-11)$root)
  }
  ask("bound of the second look", t[1:2], z[2], 1e-6)
  ask("bound of the last look", t[1:2], z[3], 1e-6)
}

table <- file.path(folder, "random-inputs.csv")
writeLines(c(paste0("# Random inputs (seed ", seed, ") answered by ", versions, "; script: src/test/r/random-inputs.R. trust: relative"),
  "# error that R's own method may have. Columns a to f hold the inputs in the order the script names them.",
  "kind,a,b,c,d,e,f,answer,trust", sapply(rows, function(row) paste(gsub("NA", "", row), collapse = ","))), table)

# Unbalanced sittings: a factor set per session, one set per trial, scores with session noise; Kenward-Roger and Satterthwaite.
data_lines <- c(); answer_lines <- c()
for (set in 1:4) {
  sessions <- sample(6:9, 1); ambient <- sample(rep(c("room", "chilled"), length.out = sessions))
  design <- do.call(rbind, lapply(1:sessions, function(s) data.frame(session = s, ambient = ambient[s], fan = rep(c("auto", "maximum"), sample(2:3, 1)))))
  design <- design[-sample(nrow(design), 2), ]
  design$score <- round(50 * exp(0.03 * (design$ambient == "chilled") + 0.01 * (design$fan == "maximum") + rnorm(sessions, 0, 0.02)[design$session] +
    rnorm(nrow(design), 0, 0.012)), 3)
  design$ambient <- factor(design$ambient, c("room", "chilled")); design$fan <- factor(design$fan, c("auto", "maximum"))
  control <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12))
  fit <- lmerTest::lmer(log(score) ~ ambient + fan + (1 | session), design, control = control)
  if (isSingular(fit)) next
  kr <- coef(summary(fit, ddf = "Kenward-Roger")); sat <- coef(summary(fit, ddf = "Satterthwaite"))
  for (effect in c("ambientchilled", "fanmaximum")) answer_lines <- c(answer_lines, paste(c(set, sub("chilled|maximum", "", effect),
    digits(c(kr[effect, "Estimate"], kr[effect, "Std. Error"], kr[effect, "df"], sat[effect, "Std. Error"], sat[effect, "df"],
    as.data.frame(VarCorr(fit))$vcov))), collapse = ","))
  data_lines <- c(data_lines, with(design, paste(set, session, ambient, fan, score, sep = ",")))
}
writeLines(c(paste0("# Invented sittings with trials missing, drawn at random (seed ", seed, "); answers in sittings-expected.csv."),
  "set,session,ambient,fan,score", data_lines), file.path(folder, "sittings.csv"))
writeLines(c(paste0("# log(score) ~ ambient + fan + (1 | session) by REML on sittings.csv, answered by ", versions, "."),
  "# R's optimiser leaves standard errors and df about 1e-5 open. session_variance and run_variance are of log scores.",
  "set,effect,estimate,kr_se,kr_df,satterthwaite_se,satterthwaite_df,session_variance,run_variance", answer_lines), file.path(folder, "sittings-expected.csv"))

# Exact permutation p of two small groups. Whole numbers, because coin loses assignments that tie with the observed one but for rounding.
lines <- c()
for (set in 1:6) {
  a <- round(rnorm(sample(4:7, 1), 100, 2), 2); b <- round(rnorm(sample(4:7, 1), 101.5, 2), 2)
  p <- as.numeric(pvalue(oneway_test(round(1e7 * log(c(a, b))) ~ factor(rep(1:2, c(length(a), length(b)))), distribution = "exact")))
  lines <- c(lines, paste(paste(a, collapse = " "), paste(b, collapse = " "), digits(p), sep = ","))
}
writeLines(c(paste0("# Two-sided exact permutation p of the difference of mean logs, these taken in whole steps of 1e-7, random groups (seed ", seed, "), answered by ", versions, "."),
  "baseline,against,p", lines), file.path(folder, "permutations.csv"))
