# Makes src/test/resources/coldproof/verdict/*.csv: tables of trials and what R says of the change in them.
# Run from the root of the project: Rscript src/test/r/verdicts.R
# R 4.2.2 with lme4 1.1-31, pbkrtest 0.5.2, emmeans 1.8.4-1, MASS 7.3-58.2.
suppressMessages({library(lme4); library(pbkrtest); library(emmeans); library(MASS)})
options(digits = 17)
folder <- "src/test/resources/coldproof/verdict/"
expected <- list()
add <- function(case, file, options, estimate, se, df) {
  t <- estimate / se
  expected[[length(expected) + 1]] <<- data.frame(case = case, file = file, options = options, estimate = estimate, se = se, df = df, t = t,
                                                   p = 2 * pt(-abs(t), df))
}
save <- function(data, file, head) {
  con <- file(paste0(folder, file), "w")
  writeLines(paste("#", head), con)
  write.csv(format(data, digits = 17, trim = TRUE), con, row.names = FALSE, quote = FALSE)
  close(con)
}
ofLm <- function(case, file, options, model, term, times = 1) {
  row <- summary(model)$coefficients[term, ]
  add(case, file, options, times * row[1], abs(times) * row[2], model$df.residual)
}
options(contrasts = c("contr.sum", "contr.poly"))

# --- textbooks; scores are exp(yield / 100), so that the analysis of logs is that of yields ---
npk <- transform(npk, score = exp(yield / 100))
save(npk, "npk.csv", "Peas, N P K factorial in six blocks, NPK confounded with blocks: W. N. Venables, B. D. Ripley, MASS, 4th ed. (2002), sec. 6.7; R datasets::npk. score = exp(yield / 100).")
m <- lm(log(score) ~ block + (N + P + K)^2, npk)
for (f in c("N", "P", "K")) {
  others <- setdiff(c("N", "P", "K"), f)
  ofLm(paste("npk", f), "npk.csv", paste0("--factor ", f, " --baseline 0 --against 1 --session block --change trial --adjust-for ", others[1], " --adjust-for ", others[2]),
       m, paste0(f, "1"), -2)
}
data(beets, package = "pbkrtest")
beets <- transform(beets, plot = paste(block, harvest, sep = "."), score = exp(sugpct / 100))
save(beets[, c("block", "harvest", "sow", "plot", "sugpct", "score")], "beets.csv",
     "Sugar beets, harvest on whole plots, sowing on subplots: U. Halekoh, S. Hojsgaard, J. Stat. Software 59(9) (2014); pbkrtest::beets. score = exp(percent of sugar / 100).")
plots <- aggregate(log(score) ~ block + harvest + plot, beets, mean); names(plots)[4] <- "y"
ofLm("beets harvest", "beets.csv", "--factor harvest --baseline harv1 --against harv2 --session plot --change session --adjust-for sow --adjust-for block",
     lm(y ~ block + harvest, plots), "harvest1", -2)
two <- subset(beets, sow %in% c("sow1", "sow5"))
ofLm("beets sow5", "beets.csv", "--factor sow --baseline sow1 --against sow5 --session plot --change trial --adjust-for harvest",
     lm(log(score) ~ plot + sow + sow:harvest, droplevels(two)), "sow1", -2)
oats <- transform(MASS::oats, plot = paste(B, V, sep = "."), score = exp(Y / 1000))
save(oats, "oats.csv", "Oats, varieties on whole plots, nitrogen on subplots, six blocks: F. Yates, JRSS Supplement 2 (1935) 181-247; MASS::oats. score = exp(Y / 1000).")
for (v in c("Golden.rain", "Marvellous")) {
  d <- droplevels(subset(oats, V %in% c("Victory", v))); d$V <- relevel(d$V, "Victory")
  means <- aggregate(log(score) ~ B + V, d, mean); names(means)[3] <- "y"
  ofLm(paste("oats", v), "oats.csv", paste0("--factor V --baseline Victory --against ", v, " --session plot --change session --adjust-for N --adjust-for B"),
       lm(y ~ B + V, means), "V1", -2)
  error <- summary(aov(log(score) ~ V * N + Error(B / V), d))$"Error: B:V"[[1]]
  stopifnot(abs(error["V", "F value"] - summary(lm(y ~ B + V, means))$coefficients["V1", 3]^2) < 1e-8) # the stratum of whole plots
}
for (n in c("0.2cwt", "0.4cwt", "0.6cwt")) {
  d <- droplevels(subset(oats, N %in% c("0.0cwt", n)))
  ofLm(paste("oats", n), "oats.csv", paste0("--factor N --baseline 0.0cwt --against ", n, " --session plot --change trial --adjust-for V"),
       lm(log(score) ~ plot + N + N:V, d), "N1", -2)
}

# --- invented benches on inputs chosen at random ---
set.seed(20260114)
bench <- function(i) {
  sessions <- sample(5:9, 1); fans <- sample(c(TRUE, FALSE), 1)
  level <- sample(rep(c("room", "chilled"), length.out = sessions))
  while (min(table(level)) < 2) level <- sample(level)
  rows <- do.call(rbind, lapply(seq_len(sessions), function(s) {
    n <- sample(3:7, 1)
    fan <- rep(c("auto", "max"), length.out = n)[sample(n)]
    data.frame(session = paste0("s", s), ambient = level[s], fan = if (fans) fan else "auto", order = seq_len(n))
  }))
  sd <- runif(1, 0.004, 0.02); between <- sd * runif(1, 0.5, 2)
  day <- rnorm(sessions, 0, between)
  rows$score <- 100 * exp(day[as.integer(substring(rows$session, 2))] + 0.02 * (rows$ambient == "chilled") + 0.01 * (rows$fan == "max")
                          - 0.002 * rows$order + rnorm(nrow(rows), 0, sd))
  rows
}
kr <- function(model, name) {
  e <- as.data.frame(pairs(emmeans(model, name, lmer.df = "kenward-roger", data = model@frame), reverse = TRUE))
  e
}
for (i in 1:16) {
  d <- bench(i); file <- sprintf("bench-%02d.csv", i)
  d$centred <- d$order - ave(d$order, d$session)
  save(d[, c("session", "ambient", "fan", "order", "score")], file, "Invented sessions of unequal size, simulated by src/test/r/verdicts.R.")
  d$ambient <- factor(d$ambient, c("room", "chilled")); d$fan <- factor(d$fan)
  both <- nlevels(d$fan) == 2
  base <- "--factor ambient --baseline room --against chilled --session session --order order --change session"
  for (drift in c(FALSE, TRUE)) {
    formula <- as.formula(paste("log(score) ~", if (both) "ambient * fan" else "ambient", if (drift) "+ centred" else "", "+ (1 | session)"))
    model <- suppressMessages(suppressWarnings(lmer(formula, d, control = lmerControl(optCtrl = list(xtol_abs = 1e-12, ftol_abs = 1e-14)))))
    if (isSingular(model, tol = 1e-3)) next # judged otherwise: see the test of fits without session noise
    e <- suppressMessages(kr(model, "ambient"))
    sign <- if (grepl("^chilled", e$contrast)) 1 else -1
    add(paste("bench", i, if (drift) "with the order" else ""), file,
        paste0(base, if (both) " --adjust-for fan" else "", if (drift) " --adjust-for order" else ""),
        sign * e$estimate, e$SE, min(e$df, length(unique(d$session)) - 2))
  }
  if (both) {
    m <- lm(log(score) ~ session + fan + fan:ambient, d)
    if (!anyNA(coef(m)["fan1"])) ofLm(paste("bench", i, "fan"), file,
        "--factor fan --baseline auto --against max --session session --order order --change trial --adjust-for ambient", m, "fan1", -2)
    m <- lm(log(score) ~ session + fan + fan:ambient + centred, d)
    ofLm(paste("bench", i, "fan with the order"), file,
        "--factor fan --baseline auto --against max --session session --order order --change trial --adjust-for ambient --adjust-for order", m, "fan1", -2)
  }
}

# --- single trials and pairs with a covariate ---
for (i in 1:6) {
  n <- sample(8:15, 1)
  d <- data.frame(order = seq_len(2 * n), pair = rep(seq_len(n), each = 2), stand = "auto", level = as.vector(replicate(n, sample(c("old", "new")))))
  d$stand <- rep(sample(c("flat", "raised"), n, TRUE), each = 2)
  if (length(unique(d$stand)) == 1) d$stand[1:2] <- setdiff(c("flat", "raised"), d$stand[1])
  d$air <- round(21 + cumsum(rnorm(2 * n, 0, 0.4)), 1)
  d$seconds <- 60 * exp(-0.02 * (d$level == "new") + 0.004 * d$air + rnorm(2 * n, 0, 0.01))
  file <- sprintf("singles-%d.csv", i)
  save(d, file, "Invented trials, simulated by src/test/r/verdicts.R.")
  d$level <- factor(d$level, c("old", "new"))
  base <- "--better lower --metric seconds --factor level --baseline old --against new"
  ofLm(paste("singles", i), file, base, lm(-log(seconds) ~ level, d), "level1", -2)
  ofLm(paste("singles", i, "air"), file, paste(base, "--adjust-for air"), lm(-log(seconds) ~ level + air, d), "level1", -2)
  ofLm(paste("singles", i, "air and stand"), file, paste(base, "--adjust-for air --adjust-for stand"), lm(-log(seconds) ~ level * stand + air, d), "level1", -2)
  ofLm(paste("pairs", i), file, paste(base, "--pair pair"), lm(-log(seconds) ~ factor(pair) + level, d), "level1", -2)
  ofLm(paste("pairs", i, "air"), file, paste(base, "--pair pair --adjust-for air"), lm(-log(seconds) ~ factor(pair) + level + air, d), "level1", -2)
}
all <- do.call(rbind, expected)
save(all, "expected.csv", "Effects on the log scale (better is positive) by R 4.2.2, lme4 1.1-31, pbkrtest 0.5.2, emmeans 1.8.4-1: src/test/r/verdicts.R. REML rows to about 1e-5 (the optimiser's).")
cat(nrow(all), "cases\n")
