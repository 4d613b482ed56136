# Writes log.csv, an invented log in which days and the two cooks differ, and the
# figures that R makes of it. Run in this folder:
#   Rscript groups.R
# R 4.2.2 with survival 3.5-3 (Debian 12) wrote the files beside it.
suppressPackageStartupMessages(library(survival))
options(digits = 17)
set.seed(411)

days <- rep(c("Mon", "Tue", "Wed", "Thu", "Fri"), each = 6)
cooks <- rep(c("A", "B", "B", "A", "A", "B"), 5)
fat <- round(runif(30, 34, 54), 1)
emulsifier <- round(exp(runif(30, log(0.9), log(3.2))), 2)
hlb <- round(runif(30, 5, 11), 1)
eta <- 2.7 + 0.02 * (fat - 44) + 0.35 * log(emulsifier) - 0.03 * (hlb - 8) +
  c(Mon = 0, Tue = -0.2, Wed = 0.5, Thu = 0.1, Fri = -0.5)[days] + c(A = 0, B = 0.15)[cooks]
minutes <- round(exp(eta + 0.25 * rnorm(30)), 1)
standing <- minutes > 24
log <- data.frame(trial = 1:30, day = days, cook = cooks, fat = fat, emulsifier = emulsifier, hlb = hlb,
  hold = ifelse(standing, "24+", sprintf("%.1f", minutes)), out = "y")
names(log) <- c("trial", "day", "cook", "fat %", "emulsifier % of mix", "blend HLB", "hold min", "came out")
write.csv(log, "log.csv", row.names = FALSE, quote = FALSE)

y <- Surv(pmin(minutes, 24), !standing)
order <- (1:30 - 1) / 29
x <- cbind(fat, lnE = log(emulsifier), hlb)
n <- 30
told <- n - sum(standing) / 2

# Likelihood-ratio tests beside straight terms, referred to F(df, told - p) as
# (exp(statistic / told) - 1) (told - p) / df, told counting trials, of which one still standing
# counts half: the F test of least squares where nothing is bounded. Level and drift factors with 90 % limits,
# t(n - p) standard errors widened by sqrt(n / (n - p)).
tests <- factors <- NULL
for (dist in c("lognormal", "weibull", "loglogistic")) {
  for (by in c("day", "cook", "order")) {
    g <- switch(by, day = model.matrix(~ factor(days, unique(days)))[, -1], cook = cbind(cooks == "B") * 1, order = cbind(order))
    fit <- survreg(y ~ x + g, dist = dist, control = survreg.control(rel.tolerance = 1e-13, maxiter = 100))
    null <- survreg(y ~ x, dist = dist, control = survreg.control(rel.tolerance = 1e-13, maxiter = 100))
    df <- ncol(g)
    p <- 4 + df
    lr <- 2 * (fit$loglik[2] - null$loglik[2])
    tests <- rbind(tests, data.frame(distribution = dist, by = by, statistic = lr, df = df, residual_df = told - p,
      p = pf(expm1(lr / told) * (told - p) / df, df, told - p, lower.tail = FALSE)))
    rows <- if (by == "order") matrix(1) else rbind(0, diag(df)) - 1 / (df + 1) # each level against the mean of all
    b <- coef(fit)[5:p]
    v <- vcov(fit)[5:p, 5:p, drop = FALSE]
    m <- drop(rows %*% b)
    r <- qt(0.95, n - p) * sqrt(n / (n - p)) * sqrt(diag(rows %*% v %*% t(rows)))
    level <- switch(by, day = unique(days), cook = c("A", "B"), order = "")
    factors <- rbind(factors, data.frame(distribution = dist, by = by, level = level, mid = exp(m), low = exp(m - r), high = exp(m + r)))
  }
}
write.csv(tests, "tests.csv", row.names = FALSE, quote = FALSE)
write.csv(factors, "factors.csv", row.names = FALSE, quote = FALSE)

# The smallest difference shown 8 times in 10 by a two-sided test at 0.05: the
# shift in standard errors at which the noncentral t distribution exceeds its
# critical value with probability 0.8.
shift <- function(df) uniroot(function(d) pt(qt(0.975, df), df, d, lower.tail = FALSE) + pt(-qt(0.975, df), df, d) - 0.8,
  c(0.1, 50), tol = 1e-12)$root
dfs <- c(1, 2, 3, 4, 5, 6, 8, 10, 14, 20, 30, 60, 200)
write.csv(data.frame(df = dfs, shift = sapply(dfs, shift)), "shift.csv", row.names = FALSE, quote = FALSE)

# The same for this log: between the ends of what each variable was tried at.
unit <- c(weibull = pi / sqrt(6), lognormal = 1, loglogistic = pi / sqrt(3)) # SD at scale 1
smallest <- NULL
for (dist in names(unit)) {
  fit <- survreg(y ~ x, dist = dist, control = survreg.control(rel.tolerance = 1e-13, maxiter = 100))
  se <- sqrt(diag(vcov(fit)))[2:4] * sqrt(n / (n - 4)) * apply(x, 2, function(v) diff(range(v)))
  smallest <- rbind(smallest, data.frame(distribution = dist, variable = c("fat_percent", "emulsifier_percent", "blend_hlb"),
    df = n - 4, sd_ln = fit$scale * unit[[dist]] * sqrt(n / (n - 4)), factor = exp(shift(n - 4) * se)))
}
write.csv(smallest, "smallest.csv", row.names = FALSE, quote = FALSE)

# Repeats of six formulas, some known only up to bounds: the scatter by maximum likelihood with a
# mean a formula, widened by n / (n - formulas), its limits by chi-squared with degrees of freedom in
# which a bound on one side counts half. Formula 6 has bounds on one side only, so tells nothing.
repeats <- data.frame(formula = c(1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5, 5, 6, 6),
  low = c(12, 15.5, 22, 17, 20, 24, 19, 8, 9.5, 7, 0, 2.5, 24, 24), high = c(12, 15.5, 22, 17, 20, Inf, 19, 10, 9.5, 7, 3, 2.5, Inf, Inf))
write.csv(repeats, "repeats.csv", row.names = FALSE, quote = FALSE)
pooled <- function(r) {
  lo <- ifelse(r$low > 0, r$low, NA)
  hi <- ifelse(is.finite(r$high), r$high, NA)
  fit <- survreg(Surv(lo, hi, type = "interval2") ~ factor(r$formula) - 1, dist = "lognormal", control = survreg.control(rel.tolerance = 1e-13, maxiter = 100))
  k <- length(unique(r$formula))
  df <- nrow(r) - sum(is.na(lo) | is.na(hi)) / 2 - k
  sd <- fit$scale * sqrt(nrow(r) / (nrow(r) - k))
  cv <- function(s) 100 * sqrt(expm1(s^2))
  data.frame(groups = k, trials = nrow(r), df = df, sd_ln = sd, cv_percent = cv(sd), low = cv(sd * sqrt(df / qchisq(0.95, df))), high = cv(sd * sqrt(df / qchisq(0.05, df))))
}
write.csv(rbind(cbind(of = "bounded", pooled(repeats[repeats$formula < 6, ])), cbind(of = "exact", pooled(repeats[repeats$formula < 3, ]))),
  "scatter.csv", row.names = FALSE, quote = FALSE)

# A log whose hold and drainage bend over fat and HLB and depend on rest, with lots of butter that went
# partly with the fat, sheets not in the order of their dates, and hold bounded where it still stood.
# Days are no factor here: they only put the trials in order. Tests stand beside all ten second-order terms
# and rest; that of rest beside the ten alone.
set.seed(412)
n <- 60
z <- runif(n, -1, 1)
curved <- data.frame(day = sample(rep(sprintf("2024-05-%02d", 6:15), each = 6)), lot = ifelse(runif(n) < ifelse(abs(z) > 0.5, 0.7, 0.2), "B", "A"),
  rest = sample(c(10, 20, 30, 40), n, TRUE), fat = round(44 + 10 * z, 1), emulsifier = round(exp(runif(n, 0, 1.2)), 2), hlb = round(runif(n, 5, 11), 1))
curved$lot[runif(n) < 0.2] <- "C"
lnE <- log(curved$emulsifier)
bend <- -1.8 * z^2 - 0.9 * ((curved$hlb - 8) / 3)^2
minutes <- round(exp(3.3 + bend + 0.4 * lnE + 0.015 * curved$rest + c(A = 0, B = -0.35, C = 0.1)[curved$lot] + 0.2 * rnorm(n)), 1)
drained <- round(exp(1.2 - bend - 0.3 * lnE - 0.01 * curved$rest + 0.25 * rnorm(n)), 2)
standing <- minutes > 25
log <- cbind(trial = 1:n, curved, hold = ifelse(standing, "25+", sprintf("%.1f", minutes)), drained = drained, out = "y")
names(log) <- c("trial", "day", "butter lot", "rest min", "fat %", "emulsifier % of mix", "blend HLB", "hold min", "drained % at 20 min", "came out")
write.csv(log, "curved.csv", row.names = FALSE, quote = FALSE)

terms <- with(curved, { s <- cbind(fat = (fat - 44) / 10, lnE, hlb = (hlb - 8) / 3)
  cbind(s, s^2, s[, 1] * s[, 2], s[, 1] * s[, 3], s[, 2] * s[, 3]) })
by_date <- order(order(curved$day, 1:n)) - 1
number <- list(order = by_date / (n - 1), rest_minutes = (curved$rest - 10) / 30)
tests <- factors <- NULL
for (result in c("hold_minutes", "drained_percent")) for (dist in c("lognormal", "weibull", "loglogistic")) {
  y <- if (result == "hold_minutes") Surv(pmin(minutes, 25), !standing) else Surv(drained)
  told <- if (result == "hold_minutes") n - sum(standing) / 2 else n
  control <- survreg.control(rel.tolerance = 1e-13, maxiter = 100)
  for (by in c("day", "butter lot", "rest_minutes", "order")) {
    names <- list(day = unique(curved$day), "butter lot" = unique(curved$lot))[[by]]
    at <- if (by == "day") curved$day else curved$lot
    g <- if (is.null(names)) cbind(number[[by]]) else model.matrix(~ factor(at, names))[, -1, drop = FALSE]
    x <- if (by == "rest_minutes") terms else cbind(terms, curved$rest)
    fit <- survreg(y ~ x + g, dist = dist, control = control)
    null <- survreg(y ~ x, dist = dist, control = control)
    k <- ncol(x) + 1
    df <- ncol(g)
    lr <- 2 * (fit$loglik[2] - null$loglik[2])
    rest <- told - k - df
    f <- expm1(lr / told) * rest / df
    p <- pf(f, df, rest, lower.tail = FALSE)
    if (result == "drained_percent" && dist == "lognormal") { # without bounds it is the F test of least squares
      a <- anova(lm(log(drained) ~ x), lm(log(drained) ~ x + g))
      stopifnot(all.equal(c(a$F[2], a$`Pr(>F)`[2]), c(f, p), tolerance = 1e-9))
    }
    tests <- rbind(tests, data.frame(result, distribution = dist, by, statistic = lr, f, df, residual_df = rest, p, p_adjusted = NA))
    rows <- if (is.null(names)) matrix(1) else rbind(0, diag(df)) - 1 / (df + 1)
    m <- drop(rows %*% coef(fit)[k + 1:df])
    r <- qt(0.95, n - k - df) * sqrt(n / (n - k - df)) * sqrt(diag(rows %*% vcov(fit)[k + 1:df, k + 1:df, drop = FALSE] %*% t(rows)))
    factors <- rbind(factors, data.frame(result, distribution = dist, by, level = if (is.null(names)) "" else names, mid = exp(m), low = exp(m - r), high = exp(m + r)))
  }
  own <- tests$result == result & tests$distribution == dist
  tests$p_adjusted[own] <- p.adjust(tests$p[own], "holm")
}
write.csv(tests, "curved_tests.csv", row.names = FALSE, quote = FALSE)
write.csv(factors, "curved_factors.csv", row.names = FALSE, quote = FALSE)
