# The tasks of coldproof.benchmark.Tasks in R; prints name, times a second of processor time, result. Best of several rounds, one thread.
suppressPackageStartupMessages({library(lme4); library(lmerTest); library(coin)})
cpu <- function() sum(proc.time()[c("user.self", "sys.self")]) # processor time: a busy machine disturbs little
rate <- function(name, seconds, rounds, task) {
  best <- 0; result <- NA
  for (round in 1:rounds) {
    start <- cpu(); done <- 0
    repeat {
      value <- task(done); if (done == 0) result <- value
      done <- done + 1
      now <- cpu()
      if (now - start >= seconds) break
    }
    best <- max(best, done / (now - start))
  }
  cat(sprintf("%s\t%.6g\t%.6g\n", name, best, result))
}
i <- 1:40; scores <- sin(3.7 * i) + ifelse(i > 20, 0.5, 0); group <- factor(i > 20)
rate("randomisation", 1, 5, function(k) as.numeric(pvalue(oneway_test(scores ~ group, distribution = approximate(nresample = 1e6)))))
n <- 1:48; session <- (n - 1) %/% 6
study <- data.frame(session = factor(session), ambient = factor(session %% 2), fan = factor((n - 1) %% 2))
study$y <- 0.03 * (session %% 2) + 0.01 * ((n - 1) %% 2) + 0.02 * sin(5.1 * (session + 1)) + 0.012 * sin(7.3 * n); study$y[1] <- study$y[1] + 0.001
contrasts(study$ambient) <- contr.sum(2); contrasts(study$fan) <- contr.sum(2) # main effects averaged over the other factor
rate("satterthwaite", 1, 5, function(k) {
  table <- coef(summary(lmerTest::lmer(y ~ ambient * fan + (1 | session), study), ddf = "Satterthwaite")); table[2, "df"] + table[3, "Pr(>|t|)"]
})
rate("kenward-roger", 1, 5, function(k) {
  table <- coef(summary(lmerTest::lmer(y ~ ambient * fan + (1 | session), study), ddf = "Kenward-Roger")); table[2, "df"] + table[3, "Pr(>|t|)"]
})
sd <- sqrt(log1p(0.015^2))
rate("size", 1, 5, function(k) ceiling(power.t.test(NULL, log1p((1 + (k %% 200) / 100) / 100), sd, 0.05, 0.9, strict = TRUE)$n))
