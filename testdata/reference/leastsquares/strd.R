# Correct digits of R's lm (tolerance 1e-12) on the certified sets. Run: Rscript strd.R
# Digits are -log10 of the relative error (of the absolute one where the certified
# value is 0), at most the 15 that the certificates carry, and 15 when all of those agree.
digits <- function(value, certified) {
  if (sprintf("%.14e", value) == sprintf("%.14e", certified)) return(15)
  off <- abs(value - certified)
  if (certified != 0) off <- off / abs(certified)
  if (is.nan(off)) 0 else if (off == 0) 15 else max(0, min(15, -log10(off)))
}
certified <- read.csv("strd/certified.csv", colClasses = c("character", "character", "numeric"))
rows <- list()
for (set in unique(certified$set)) {
  d <- read.csv(paste0("strd/", set, ".csv"))
  power <- c(filip = 10, wampler1 = 5, wampler2 = 5, wampler3 = 5, wampler4 = 5, wampler5 = 5)[set]
  if (!is.na(power)) for (k in 2:power) d[[paste0("x", k)]] <- d$x^k
  f <- if (set == "noint1") y ~ . - 1 else y ~ .
  m <- lm(f, data = d, tol = 1e-12)
  s <- suppressWarnings(summary(m))
  c0 <- certified[certified$set == set, ]
  for (i in seq_len(nrow(c0))) {
    q <- c0$quantity[i]
    k <- as.integer(sub("[a-z]+", "", q)) + 1
    v <- if (grepl("^coef", q)) coef(m)[k] else if (grepl("^se", q)) s$coefficients[k, 2] else
      if (q == "sd") s$sigma else if (q == "r2") s$r.squared else s$fstatistic[1]
    rows[[length(rows) + 1]] <- data.frame(set, quantity = q, digits = sprintf("%.2f", digits(unname(v), c0$value[i])))
  }
}
write.csv(do.call(rbind, rows), "strd_digits_r.csv", row.names = FALSE, quote = FALSE)
