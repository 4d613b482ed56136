# Writes the columns that the fits beside it are of. Invented. Run once: Rscript sets.R
set.seed(20261129)
week <- rep(0:5, each = 8)
day <- week * 2 + rep(rep(0:1, each = 4), 6)
x1 <- round(runif(48, -1, 1), 3)
x2 <- round(runif(48, -1, 1), 3)
lot <- as.integer((seq_along(week) %% 3) == 0)
u <- rnorm(6, 0, 0.25)[week + 1]
s <- rnorm(6, 0, 0.3)[week + 1]
v <- rnorm(12, 0, 0.2)[day + 1]
y <- round(3 + 0.4 * x1 - 0.5 * x1^2 + 0.2 * x2 - 0.3 * lot + u + s * x1 + v + rnorm(48, 0, 0.2), 4)
low <- high <- y
high[y > 3.3] <- NA
low[y > 3.3] <- 3.3
write.csv(data.frame(week, day, x1, x2, lot, y, low, high), "weeks.csv", row.names = FALSE, quote = FALSE, na = "")
