# Writes the sets of bounded observations as low,high,terms. A blank low is "at
# most", a blank high "at least". Run once: Rscript sets.R
library(survival)
put <- function(name, low, high, ...) {
  d <- data.frame(low = low, high = high, ...)
  write.csv(d, paste0(name, ".csv"), row.names = FALSE, quote = FALSE, na = "")
}
# From R's survival package: see README.md.
with(ovarian, put("ovarian", futime, ifelse(fustat == 1, futime, NA), age = age, rx = rx))
with(lung, put("lung", time, ifelse(status == 2, time, NA), age = age, sex = sex))
with(tobin, put("tobin", ifelse(durable > 0, durable, NA), durable, age = age, quant = quant))
# Tobin's values one up, so that a distribution of positive values can take them.
with(tobin, put("tobin_plus_one", ifelse(durable > 0, durable + 1, NA), durable + 1, age = age, quant = quant))
# Invented: foams looked at every few minutes, so every value lies between looks.
set.seed(20261125)
fat <- rep(c(30, 36, 42, 48, 54), each = 6)
emulsifier <- rep(c(0.5, 1, 1.5, 2, 2.5, 3), 5)
hold <- exp(2.2 + 0.5 * log(emulsifier) - 0.03 * (fat - 42) + 0.35 * rnorm(30))
looks <- c(2, 4, 6, 8, 10, 15, 20, 30, 45, 60)
before <- c(NA, looks)[findInterval(hold, looks) + 1]
after <- looks[findInterval(hold, looks) + 1]
put("looks", before, after, fat = fat, emulsifier = emulsifier)
# Invented: one log with all four kinds of observation.
set.seed(7)
fat <- round(runif(36, 30, 60), 1)
emulsifier <- round(runif(36, 0.4, 3), 2)
hold <- round(exp(2.6 + 0.5 * log(emulsifier) - 0.025 * (fat - 45) + 0.4 * rnorm(36)), 1)
low <- high <- hold
low[hold < 8] <- NA; high[hold < 8] <- 8
high[hold > 20] <- NA; low[hold > 20] <- 20
b <- seq(1, 36, by = 2)
b <- b[!is.na(low[b]) & !is.na(high[b])]
low[b] <- floor(hold[b] / 2) * 2; high[b] <- low[b] + 2
put("four_kinds", low, high, fat = fat, emulsifier = emulsifier, weight = rep(c(1, 2, 1.5), 12))
