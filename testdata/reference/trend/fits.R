# Reference figures for weeks.csv. Run: Rscript fits.R (r-cran-nlme, r-cran-survival)
library(nlme)
library(survival)
d <- read.csv("weeks.csv")
rows <- list()
add <- function(fit, quantity, value) rows[[length(rows) + 1]] <<- data.frame(fit, quantity, value = sprintf("%.12g", value))
tight <- lmeControl(tolerance = 1e-10, msTol = 1e-12, msMaxIter = 500, niterEM = 200, maxIter = 500, opt = "nlminb")
# Levels of weeks, of days within weeks, and slopes of weeks in x1, each with a spread of its own.
d$week <- factor(d$week)
d$day <- factor(d$day)
m <- lme(y ~ x1 + I(x1^2) + x2 + lot, random = list(week = pdDiag(~x1), day = ~1), data = d, method = "REML", control = tight)
v <- as.numeric(VarCorr(m)[, "StdDev"])
v <- v[!is.na(v)]
for (i in 1:4) add("lme", c("sd_week", "sd_slope", "sd_day", "sd_rest")[i], v[i])
for (i in 1:5) {
  add("lme", paste0("coef", i - 1), fixef(m)[i])
  add("lme", paste0("se", i - 1), sqrt(m$varFix[i, i]))
}
add("lme", "loglik", as.numeric(logLik(m)))
r <- ranef(m)
for (w in 1:6) {
  add("lme", paste0("level", w - 1), r$week[w, "(Intercept)"])
  add("lme", paste0("slope", w - 1), r$week[w, "x1"])
}
# Bounds without groups.
s <- survreg(Surv(low, high, type = "interval2") ~ x1 + I(x1^2) + x2 + lot, data = d, dist = "gaussian",
  control = survreg.control(rel.tolerance = 1e-14, maxiter = 500, toler.chol = 1e-14))
for (i in 1:5) {
  add("survreg", paste0("coef", i - 1), s$coefficients[i])
}
add("survreg", "scale", s$scale)
add("survreg", "loglik", s$loglik[2])
# The covariance of the coefficients at that scale.
h <- solve(solve(s$var)[1:5, 1:5])
for (i in 1:5) add("survreg", paste0("se", i - 1), sqrt(h[i, i]))
# A steady move: Nile, R's own data (Cobb 1978, Biometrika 65:243), by Kendall's test, which for a
# series against its order is Mann's.
k <- cor.test(seq_along(Nile), as.numeric(Nile), method = "kendall", exact = FALSE, continuity = TRUE)
add("nile", "z", k$statistic)
add("nile", "p", k$p.value)
p <- combn(length(Nile), 2)
add("nile", "slope", median((Nile[p[2, ]] - Nile[p[1, ]]) / (p[2, ] - p[1, ])))
write.csv(do.call(rbind, rows), "fits.csv", row.names = FALSE, quote = FALSE)
write.csv(data.frame(year = 1871:1970, flow = as.numeric(Nile)), "nile.csv", row.names = FALSE, quote = FALSE)
