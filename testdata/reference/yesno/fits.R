# Reference figures for yes/no answers. Run: Rscript fits.R
library(brglm2)
data(endometrial, package = "brglm2")
d <- with(endometrial, data.frame(yes = HG, nv = NV, pi = PI, eh = EH))
write.csv(d, "endometrial.csv", row.names = FALSE, quote = FALSE)
rows <- list()
put <- function(set, method, quantity, value)
  rows[[length(rows) + 1]] <<- data.frame(set, method, quantity, value = sprintf("%.15g", value))

# Half ln |information| added to the log likelihood (Firth 1993), maximised with
# some coefficients fixed; the 95 % interval is where twice its fall is chi-squared.
penalised <- function(x, y, b) {
  eta <- drop(x %*% b)
  w <- plogis(eta) * plogis(-eta)
  sum(ifelse(y == 1, plogis(eta, log.p = TRUE), plogis(-eta, log.p = TRUE))) +
    0.5 * as.numeric(determinant(crossprod(x * sqrt(w)))$modulus)
}
constrained <- function(x, y, start, k, value) {
  full <- function(rest) { b <- numeric(ncol(x)); b[k] <- value; b[-k] <- rest; b }
  f <- function(rest) -penalised(x, y, full(rest))
  best <- list(value = Inf)
  for (shift in c(0, 1, 5)) { # the likelihood is flat far out: from several starts, by two methods
    r <- list(par = start * (1 + shift))
    for (pass in 1:4) {
      r <- optim(r$par, f, method = "Nelder-Mead", control = list(reltol = 1e-15, maxit = 20000))
      r <- optim(r$par, f, method = "BFGS", control = list(reltol = 1e-16, maxit = 2000))
    }
    if (r$value < best$value) best <- r
  }
  best
}
fits <- function(set, d, terms) {
  x <- as.matrix(cbind(1, d[terms])); y <- d$yes
  sc <- c(1, apply(x[, -1, drop = FALSE], 2, sd)); xs <- sweep(x, 2, sc, "/")
  m <- glm(y ~ x - 1, family = binomial("logit"), method = "brglmFit", type = "AS_mean",
           control = list(epsilon = 1e-13, maxit = 10000))
  p <- ncol(x)
  put(set, "reduced", paste0("coef", 0:(p - 1)), coef(m))
  put(set, "reduced", paste0("se", 0:(p - 1)), sqrt(diag(vcov(m))))
  put(set, "reduced", "loglik", as.numeric(logLik(m)))
  top <- penalised(x, y, coef(m))
  put(set, "reduced", "penalised", top)
  for (k in 2:p) {
    b <- coef(m) * sc
    fall <- function(v) { 2 * (penalised(xs, y, b) + constrained(xs, y, b[-k], k, v)$value) - qchisq(0.95, 1) }
    lo <- uniroot(fall, b[k] + c(-8, -0.2) * sc[k] * sqrt(vcov(m)[k, k]), tol = 1e-10, extendInt = "downX")$root
    hi <- uniroot(fall, b[k] + c(0.2, 8) * sc[k] * sqrt(vcov(m)[k, k]), tol = 1e-10, extendInt = "upX")$root
    put(set, "reduced", c(paste0("low", k - 1), paste0("high", k - 1)), c(lo, hi) / sc[k])
  }
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
ci <- function(k, v) { b <- coef(m)
  o <- v * overlap[[names(b)[k]]]; f <- reformulate(setdiff(c("fat", "lipophilic"), names(b)[k]), "yes")
  overlap$o <- o
  as.numeric(logLik(glm(update(f, . ~ . + offset(o)), family = binomial, data = overlap, control = list(epsilon = 1e-15, maxit = 100)))) }
for (k in 2:3) {
  fall <- function(v) 2 * (as.numeric(logLik(m)) - ci(k, v)) - qchisq(0.95, 1)
  se <- sqrt(vcov(m)[k, k]); b <- coef(m)[k]
  put("overlap", "likelihood", c(paste0("low", k - 1), paste0("high", k - 1)),
      c(uniroot(fall, c(b - 6 * se, b - 0.2 * se), tol = 1e-12, extendInt = "yes")$root, uniroot(fall, c(b + 0.2 * se, b + 6 * se), tol = 1e-12, extendInt = "yes")$root))
}
separable <- transform(overlap, yes = as.numeric(fat < 48))
write.csv(separable, "separable.csv", row.names = FALSE, quote = FALSE)
fits("separable", separable, c("fat", "lipophilic"))
write.csv(do.call(rbind, rows), "fits.csv", row.names = FALSE, quote = FALSE)
