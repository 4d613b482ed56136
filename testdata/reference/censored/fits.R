# Reference figures for the sets in this folder. Run: Rscript fits.R
library(survival)
tight <- survreg.control(rel.tolerance = 1e-15, maxiter = 500, toler.chol = 1e-14)
dists <- c(lognormal = "lognormal", weibull = "weibull", loglogistic = "loglogistic", normal = "gaussian")
out <- function(file, rows) {
  d <- do.call(rbind, rows)
  d$value <- sprintf("%.15g", d$value)
  write.csv(d, file, row.names = FALSE, quote = FALSE)
}
fit <- function(d, terms, dist, weights = NULL) {
  y <- Surv(d$low, d$high, type = "interval2")
  x <- as.matrix(cbind(`(one)` = rep(1, nrow(d)), d[terms]))
  w <- if (is.null(weights)) rep(1, nrow(d)) else weights
  survreg(y ~ x - 1, dist = dist, weights = w, control = tight)
}
rows <- list()
tests <- list()
for (set in c("handbook", "ovarian", "lung", "tobin", "tobin_plus_one", "looks", "four_kinds", "four_kinds_weighted")) {
  d <- read.csv(paste0(sub("_weighted", "", set), ".csv"))
  w <- if (set == "four_kinds_weighted") d$weight else NULL
  terms <- setdiff(names(d), c("low", "high", "weight"))
  for (f in names(dists)) {
    if (set == "tobin" && f != "normal") next
    m <- fit(d, terms, dists[f], w)
    p <- length(m$coefficients)
    theta <- c(m$coefficients, log(m$scale))
    cov <- m$var
    rows[[length(rows) + 1]] <- data.frame(set, family = f,
      quantity = c(paste0("coef", 0:(p - 1)), "scale", "loglik", paste0("se", 0:p)),
      value = c(m$coefficients, m$scale, m$loglik[2], sqrt(diag(cov))))
    for (k in seq_along(terms)) {
      m0 <- fit(d, terms[-k], dists[f], w)
      tests[[length(tests) + 1]] <- data.frame(set, family = f, column = k, value = 2 * (m$loglik[2] - m0$loglik[2]))
    }
  }
}
out("fits.csv", rows)
out("tests.csv", tests)

# Log density, log tails of the standardised distributions, far into the tails.
rows <- list()
z <- c(-40, -20, -8, -6.5, -5, -2, -1, -0.3, 0, 0.4, 1, 2, 3, 5.9, 6.1, 8, 20, 37, 40)
gz <- z[z < 6.3] # the smallest extreme value's upper tail is exp(-exp(z))
add <- function(f, z, what, v) rows[[length(rows) + 1]] <<- data.frame(family = f, z, what, value = v)
add("normal", z, "density", dnorm(z, log = TRUE)); add("normal", z, "above", pnorm(z, lower = FALSE, log = TRUE))
add("normal", z, "below", pnorm(z, log = TRUE))
add("loglogistic", z, "density", dlogis(z, log = TRUE)); add("loglogistic", z, "above", plogis(z, lower = FALSE, log = TRUE))
add("loglogistic", z, "below", plogis(z, log = TRUE))
e <- exp(gz)
add("weibull", gz, "density", dweibull(e, 1, log = TRUE) + gz); add("weibull", gz, "above", pweibull(e, 1, lower = FALSE, log = TRUE))
add("weibull", gz, "below", pweibull(e, 1, log = TRUE))
out("functions.csv", rows)
