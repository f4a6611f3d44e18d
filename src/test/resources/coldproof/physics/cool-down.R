# Makes cool-down.csv (readings) and cool-down-fit.csv (nls result on the window between 10 and 90 % of the span).
# Rscript cool-down.R ; simulated data, invented device.
set.seed(20260114)
t <- seq(0, 5400, by = 30)
y <- round(-5 + 26 * exp(-t / 1500) + rnorm(length(t), 0, 0.08), 3)
write.table(data.frame(seconds = t, celsius = sprintf("%.3f", y)), "cool-down.csv", sep = ",", row.names = FALSE, quote = FALSE)
share <- (y - y[1]) / (y[length(y)] - y[1])
w <- share >= 0.1 & share <= 0.9
d <- data.frame(t = t[w], y = y[w])
free <- nls(y ~ s + a * exp(-t / tau), d, start = list(s = -4, a = 25, tau = 1400), control = nls.control(tol = 1e-7, minFactor = 1e-10))
fixed <- nls(y ~ -5 + a * exp(-t / tau), d, start = list(a = 25, tau = 1400), control = nls.control(tol = 1e-7, minFactor = 1e-10))
r2 <- function(m) 1 - sum(resid(m)^2) / sum((d$y - mean(d$y))^2)
row <- function(name, m, s) sprintf("%s,%.10g,%.10g,%.10g,%.12g,%d", name, coef(m)["tau"], coef(summary(m))["tau", 2], s, r2(m), nrow(d))
writeLines(c(paste0("# tau and its standard error (s), surroundings (degC), R squared, points: nls of ", R.version.string, ", cool-down.R"),
  "surroundings,tau,standardError,surroundingsCelsius,rSquared,points", row("fitted", free, coef(free)["s"]), row("given", fixed, -5)), "cool-down-fit.csv")
