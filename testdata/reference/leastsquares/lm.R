# R's lm and its diagnostics on the sets in this folder. Run: Rscript lm.R
rows <- list()
put <- function(fit, quantity, value)
  rows[[length(rows) + 1]] <<- data.frame(fit, quantity, index = seq_along(value) - 1, value = sprintf("%.15g", value))
lack <- function(name, m, groups) {
  y <- model.response(model.frame(m))
  pure <- lm(y ~ factor(groups))
  ss <- deviance(m) - deviance(pure); df <- df.residual(m) - df.residual(pure)
  f <- (ss / df) / (deviance(pure) / df.residual(pure))
  put(name, "lack", c(ss, deviance(pure), df, df.residual(pure), f, pf(f, df, df.residual(pure), lower.tail = FALSE)))
}
figures <- function(name, m) {
  s <- summary(m); h <- hatvalues(m); w <- if (is.null(weights(m))) rep(1, length(h)) else weights(m)
  y <- model.response(model.frame(m))
  put(name, "coef", coef(m)); put(name, "se", s$coefficients[, 2])
  put(name, "sd", s$sigma); put(name, "r2", s$r.squared); put(name, "adjusted", s$adj.r.squared)
  put(name, "f", s$fstatistic[1])
  put(name, "residual", residuals(m)); put(name, "leverage", h)
  left <- sapply(seq_along(y), function(i) { # refitted, not by formula
    x <- model.matrix(m); b <- lm.wfit(x[-i, , drop = FALSE], y[-i], w[-i])$coefficients
    sum(x[i, ] * b) })
  put(name, "leftout", left)
  put(name, "leaveoneout", 1 - sum(w * (y - left)^2) / sum(w * (y - weighted.mean(y, w))^2))
  x <- model.matrix(m)[, -1, drop = FALSE]
  v <- sapply(seq_len(ncol(x)), function(j) 1 / (1 - summary(lm(x[, j] ~ x[, -j], weights = w))$r.squared))
  put(name, "inflation", v)
}
d <- read.csv("response_surface.csv")
d <- data.frame(uniformity = d$uniformity, stress = d$stress, p = d$coded_pressure, r = d$coded_h2wf6,
                w = c(1, 2, 1, 3, 1, 0.5, 1, 2, 1.5, 1, 4))
d$pr <- d$p * d$r; d$pp <- d$p^2; d$rr <- d$r^2
group <- paste(d$p, d$r)
figures("full", lm(uniformity ~ p + r + pr + pp + rr, d))
m <- lm(uniformity ~ p + r + pr, d); figures("reduced", m); lack("reduced", m, group)
m <- lm(stress ~ p + r + pp, d); figures("stress", m); lack("stress", m, group)
figures("weighted", lm(uniformity ~ p + r + pr, d, weights = w))
figures("longley", lm(y ~ ., read.csv("strd/longley.csv")))
e <- read.csv("strd/pontius.csv")
m <- lm(y ~ x, e); lack("straight", m, e$x)
m <- lm(y ~ x + I(x^2), e); lack("quadratic", m, e$x)
write.csv(do.call(rbind, rows), "lm.csv", row.names = FALSE, quote = FALSE)
