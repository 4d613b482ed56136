# Reference figures for yes/no answers. Run: Rscript fits.R
library(brglm2)
data(endometrial, package = "brglm2")
d <- with(endometrial, data.frame(yes = HG, nv = NV, pi = PI, eh = EH))
write.csv(d, "endometrial.csv", row.names = FALSE, quote = FALSE)
rows <- list()
put <- function(set, method, quantity, value)
  rows[[length(rows) + 1]] <<- data.frame(set, method, quantity, value = sprintf("%.15g", value))

fits <- function(set, d, terms) {
  x <- as.matrix(cbind(1, d[terms])); y <- d$yes
  m <- glm(y ~ x - 1, family = binomial("logit"), method = "brglmFit", type = "AS_mean",
           control = list(epsilon = 1e-13, maxit = 10000))
  p <- ncol(x)
  put(set, "reduced", paste0("coef", 0:(p - 1)), coef(m))
  put(set, "reduced", paste0("se", 0:(p - 1)), sqrt(diag(vcov(m))))
  put(set, "reduced", "loglik", as.numeric(logLik(m)))
  w <- plogis(drop(x %*% coef(m))); w <- w * (1 - w) # half ln |information| is added to the log likelihood (Firth 1993)
  put(set, "reduced", "penalised", as.numeric(logLik(m)) + 0.5 * as.numeric(determinant(crossprod(x * sqrt(w)))$modulus))
}
fits("endometrial", d, c("nv", "pi", "eh"))

# Invented: whether a foam came out, with overlap; and the same made separable.
overlap <- data.frame(
  yes = c(1, 1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 1, 0),
  fat = c(30, 32, 35, 38, 40, 41, 43, 45, 46, 47, 49, 50, 51, 53, 55, 58, 54, 60, 36, 44),
  lipophilic = c(2, 2.5, 1, 4, 5, 2, 3, 4.5, 1.5, 2, 4, 5, 1, 3, 4, 5, 1.2, 2, 3, 2.2))
write.csv(overlap, "overlap.csv", row.names = FALSE, quote = FALSE)
fits("overlap", overlap, c("fat", "lipophilic"))
m <- glm(yes ~ fat + lipophilic, family = binomial, data = overlap, control = list(epsilon = 1e-15, maxit = 100))
put("overlap", "likelihood", paste0("coef", 0:2), coef(m))
put("overlap", "likelihood", paste0("se", 0:2), sqrt(diag(vcov(m))))
put("overlap", "likelihood", "loglik", as.numeric(logLik(m)))
separable <- transform(overlap, yes = as.numeric(fat < 48))
write.csv(separable, "separable.csv", row.names = FALSE, quote = FALSE)
fits("separable", separable, c("fat", "lipophilic"))
write.csv(do.call(rbind, rows), "fits.csv", row.names = FALSE, quote = FALSE)
