# The fits of a report, plainly: what somebody who knows R would write for a log of this form, to
# hold foamfield's time and its likelihoods against. Run: Rscript plain.R sixty.csv
# Every result in every distribution, straight and curved in fat, ln emulsifier and blend HLB:
# survreg for numbers with their bounds, glm for yes and no. With --left-out also each
# fit once more without every trial, whose result is then scored, as a report does for all but the
# normal. No prior, no search, no limits, no text.
suppressPackageStartupMessages(library(survival))
asked <- commandArgs(TRUE)
log <- read.csv(asked[1], check.names = FALSE, na.strings = c("", "n/a"))
names(log) <- c("trial", "date", "oil", "water", "low", "high", "came_out", "broke", "hold", "drained")

# The mix: glycerol monostearate has HLB 3.8, the sucrose ester 15.
emulsifier <- log$low + log$high
batch <- log$oil + log$water + emulsifier
unit <- function(x) (x - mean(x)) / sd(x)
log$fat <- unit(100 * log$oil / batch)
log$emulsifier <- unit(log(100 * emulsifier / batch))
log$hlb <- unit((3.8 * log$low + 15 * log$high) / emulsifier)
orders <- list(
  ~ fat + emulsifier + hlb,
  ~ fat + emulsifier + hlb + I(fat^2) + I(emulsifier^2) + I(hlb^2) + fat:emulsifier + fat:hlb + emulsifier:hlb)

# A number or its bounds: 17, 20+, 25-30.
bounds <- function(text) {
  parts <- strsplit(sub("+", "-", as.character(text), fixed = TRUE), "-", fixed = TRUE)
  low <- vapply(parts, function(p) as.numeric(p[1]), 0)
  high <- ifelse(grepl("-", sub("+", "-", as.character(text), fixed = TRUE), fixed = TRUE), vapply(parts, function(p) as.numeric(p[2]), 0), low)
  data.frame(low = low, high = high)
}

out <- list()
keep <- function(result, distribution, order, loglik, score) {
  out[[length(out) + 1]] <<- data.frame(result, distribution, order, log_likelihood = loglik, left_out_score = score)
}
left_out <- "--left-out" %in% asked

for (result in c("came_out", "broke")) {
  d <- log[!is.na(log[[result]]) & (result == "came_out" | log$came_out == "y"), ]
  d$y <- as.numeric(d[[result]] == "y")
  for (k in seq_along(orders)) {
    f <- update(orders[[k]], y ~ .)
    m <- suppressWarnings(glm(f, binomial, d)) # where trials split cleanly it warns
    score <- if (left_out) mean(vapply(seq_len(nrow(d)), function(i) {
      p <- predict(suppressWarnings(glm(f, binomial, d[-i, ])), d[i, ], type = "response")
      log(if (d$y[i] == 1) p else 1 - p)
    }, 0)) else NA
    keep(result, "logistic", k, as.numeric(logLik(m)), score)
  }
}

density <- list(
  lognormal = function(y, at, s) dlnorm(y, at, s, log = TRUE), weibull = function(y, at, s) dweibull(y, 1 / s, exp(at), log = TRUE),
  loglogistic = function(y, at, s) dlogis(log(y), at, s, log = TRUE) - log(y))
for (result in c("hold", "drained")) {
  d <- log[!is.na(log[[result]]), ]
  b <- bounds(d[[result]])
  d$y <- Surv(b$low, b$high, type = "interval2")
  for (distribution in c("lognormal", "weibull", "loglogistic", "gaussian")) for (k in seq_along(orders)) {
    f <- update(orders[[k]], y ~ .)
    m <- survreg(f, d, dist = distribution)
    score <- NA
    if (left_out && distribution != "gaussian") {
      exact <- which(!is.na(b$high) & b$low == b$high)
      score <- mean(vapply(exact, function(i) {
        without <- survreg(f, d[-i, ], dist = distribution)
        density[[distribution]](b$low[i], predict(without, d[i, ], type = "lp"), without$scale)
      }, 0))
    }
    keep(result, distribution, k, m$loglik[2], score)
  }
}
write.csv(do.call(rbind, out), row.names = FALSE, quote = FALSE)
