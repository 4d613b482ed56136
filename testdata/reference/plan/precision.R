# D-efficiency and prediction variance of layouts by plain matrix algebra.
#   Rscript precision.R     (R 4.2.2; no packages)
# reads points.csv (layout, x1, x2, x3 by half sides from the middle of the box) and
# places.csv (the region), writes precision.csv.
points <- read.csv("points.csv")
places <- read.csv("places.csv")
straight <- function(d) cbind(1, as.matrix(d))
curved <- function(d) {
  m <- straight(d)
  for (i in seq_len(ncol(d))) for (j in seq_len(i)) m <- cbind(m, d[[i]] * d[[j]])
  m
}
rows <- NULL
for (layout in unique(points$layout)) for (order in 1:2) {
  terms <- if (order == 1) straight else curved
  x <- terms(points[points$layout == layout, c("x1", "x2", "x3")])
  at <- terms(places[, c("x1", "x2", "x3")])
  information <- t(x) %*% x
  if (qr(x)$rank < ncol(x)) { d <- 0; v <- Inf } else {
    d <- 100 * det(information)^(1 / ncol(x)) / nrow(x)
    v <- rowSums((at %*% solve(information)) * at)
  }
  rows <- rbind(rows, data.frame(layout, order, d_efficiency = d, mean_variance = mean(v), most_variance = max(v)))
}
write.csv(format(rows, digits = 12), "precision.csv", row.names = FALSE, quote = FALSE)
