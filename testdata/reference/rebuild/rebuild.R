# Rebuilds fits, beliefs and the starts' chances from results.json alone, by a program
# that shares nothing with the one that wrote it. Run: Rscript rebuild.R results.json ...
# With --continuous an edge's steepness has its whole normal prior, not the points that
# stand for it. Where few draws reach a limit and it is not found, the walkers go four times
# as far; with --long they always do, with --once never. It ends with status 1 where a number is not found again.
suppressPackageStartupMessages({library(jsonlite); library(survival)})

# The chance that the search goes by rests on three moments of each line.
within <- list(estimate = 1e-5, loglik = 1e-8, line = 0.25, closed = 0.01, chance = 0.01, limit = 0.02)
walkers <- 200; settle <- 300; steps <- 1500; every <- 10
misses <- 0

num <- function(x) if (is.null(x)) NA_real_ else as.numeric(x)
nums <- function(x) vapply(x, num, 0)
matrix_of <- function(rows) do.call(rbind, lapply(rows, nums))
say <- function(what, theirs, ours, within) {
  off <- max(abs(theirs - ours))
  ok <- is.finite(off) && off <= within
  if (!ok) misses <<- misses + 1
  cat(sprintf("  %-58s %9.4f %9.4f %9.1e%s\n", what, theirs[1], ours[1], off, if (ok) "" else "  NOT FOUND AGAIN"))
}

# ---- the trials, as every line sees them

moved <- function(r) Filter(function(v) v$role == "moved", r$variables)
coordinate <- function(v, x) ((if (v$log) log(x) else x) - v$centre) / v$scale
placed <- function(r) Filter(function(t) !is.null(t$beside), r$trials)

# products is one row of a design: of each term the product of its variables.
products <- function(r, terms, mix) {
  z <- vapply(moved(r), function(v) coordinate(v, num(mix[[v$name]])), 0)
  names(z) <- vapply(moved(r), function(v) v$name, "")
  of_mix <- Filter(function(t) all(unlist(t) %in% names(z)), terms)
  vapply(of_mix, function(t) prod(z[as.character(unlist(t))]), 0)
}
beside_names <- function(r, m) {
  names <- vapply(moved(r), function(v) v$name, "")
  unlist(Filter(function(t) !all(unlist(t) %in% names), m$terms))
}
design <- function(r, terms, trials)
  do.call(rbind, lapply(trials, function(t) c(products(r, terms, t))))
with_beside <- function(x, trials) cbind(x, do.call(rbind, lapply(trials, function(t) nums(t$beside))))

# bounds are what was seen of a number: equal ends are exact, infinite ones none.
# Where weeks or lots matter, beliefs count a trial as the latest of them would have given it.
bounds <- function(trials, outcome, score, now = FALSE) {
  each <- lapply(trials, function(t) {
    if (outcome %in% c("hold_minutes", "drained_percent")) {
      seen <- c(num(t[[outcome]]$low), num(t[[outcome]]$high))
      if (now && !is.null(t$now_factors[[outcome]])) seen <- seen * t$now_factors[[outcome]]
    } else {
      seen <- rep(t$extras[[outcome]], 2)
      if (!is.null(score)) seen <- c(if (seen[1] > score$lowest) seen[1] - 0.5 else NA, if (seen[2] < score$highest) seen[2] + 0.5 else NA)
    }
    ifelse(is.na(seen), c(-Inf, Inf), seen)
  })
  do.call(rbind, each)
}
answers <- function(trials, outcome)
  vapply(trials, function(t) if (outcome == "broke") isTRUE(t$broke) else
    if (is.null(t$came_out)) TRUE else t$came_out == "yes", NA)
# nearly is which trials came out partly, where a line tells them from the clogged ones.
nearly <- function(m, trials)
  if (is.null(m$nearly_band)) rep(FALSE, length(trials)) else vapply(trials, function(t) identical(t$came_out, "partly"), NA)
telling <- function(r, outcome) Filter(function(t) outcome %in% unlist(t$tells), placed(r))

# ---- (a) the fits, by survreg, glm and Firth's penalty

fitted_trials <- function(r, f) {
  chain <- c("came_out", "broke", "hold_minutes", "drained_percent")
  if (f$result %in% chain) telling(r, f$result) else Filter(function(t) !is.null(t$extras[[f$result]]), placed(r))
}
# differing is what varied beside the mix in a fit's trials.
differing <- function(r, f) {
  beside <- do.call(rbind, lapply(fitted_trials(r, f), function(t) nums(t$beside)))
  if (length(beside) == 0) return(character(0))
  beside_names(r, r$model[[1]])[apply(beside, 2, function(v) any(v != v[1]))]
}
refit <- function(r, f) {
  trials <- fitted_trials(r, f)
  x <- design(r, lapply(f$terms, function(t) t$variables), trials)
  if (f$distribution == "logistic") {
    y <- answers(trials, f$result)
    if (f$estimator == "bias_reduced") return(firth(x, y))
    g <- glm(y ~ x - 1, family = binomial, control = glm.control(epsilon = 1e-14, maxit = 200))
    return(list(terms = coef(g), loglik = as.numeric(logLik(g))))
  }
  b <- bounds(trials, f$result, f$score)
  positive <- f$distribution != "normal"
  low <- ifelse(is.infinite(b[, 1]) | positive & b[, 1] <= 0, NA, b[, 1])
  high <- ifelse(is.infinite(b[, 2]), NA, b[, 2])
  s <- survreg(Surv(low, high, type = "interval2") ~ x - 1, dist = if (positive) f$distribution else "gaussian",
               control = survreg.control(rel.tolerance = 1e-12, maxiter = 500, toler.chol = 1e-14))
  list(terms = coef(s), loglik = s$loglik[2], scale = s$scale)
}
# firth climbs by the scores that his penalty changes (1993).
firth <- function(x, y) {
  b <- numeric(ncol(x))
  for (i in 1:5000) {
    p <- plogis(drop(x %*% b)); w <- p * (1 - p)
    inverse <- solve(crossprod(x * sqrt(w)))
    lever <- w * rowSums((x %*% inverse) * x)
    step <- drop(inverse %*% crossprod(x, y - p + lever * (0.5 - p)))
    b <- b + step * min(1, 0.5 / max(abs(step)))
    if (max(abs(step)) < 1e-12) break
  }
  list(terms = b, loglik = sum(log(ifelse(y, p, 1 - p))))
}
check_fits <- function(r) {
  n <- 0; off <- c(0, 0); left_out <- 0
  for (f in r$fits) left_out <- left_out + !identical(as.character(unlist(f$varied_beside)), as.character(differing(r, f)))
  say(sprintf("%d fits: what varied beside the mix is another", length(r$fits)), 0, left_out, 0)
  for (f in r$fits) if (f$failure == "") {
    again <- refit(r, f)
    errors <- nums(lapply(f$terms, function(t) t$std_error))
    errors[is.na(errors)] <- 1
    theirs <- vapply(f$terms, function(t) t$estimate, 0)
    one <- c(max(abs(theirs - again$terms) / errors), abs(f$log_likelihood - again$loglik) / max(1, abs(f$log_likelihood)))
    if (!is.null(again$scale)) one[1] <- max(one[1], abs(f$scale / again$scale - 1))
    if (one[1] > within$estimate || one[2] > within$loglik)
      cat(sprintf("  %s %s %s order %d: off by %.1e of a standard error, log likelihood by %.1e\n", f$result, f$distribution, f$estimator, f$order, one[1], one[2]))
    off <- pmax(off, one); n <- n + 1
  }
  say(sprintf("%d fits: estimates, in standard errors", n), 0, off[1], within$estimate)
  say(sprintf("%d fits: log likelihood, of itself", n), 0, off[2], within$loglik)
}

# ---- (b) beliefs, by walkers that step along differences between one another (ter
# Braak 2006): each half moves by the other half's, which leaves the target as it is.

walk <- function(target, at, gibbs = function(state, i) state) {
  n <- nrow(at); d <- ncol(at)
  state <- list(at = at, k = rep(2L, n))
  state$lp <- target(state$at, state$k)
  kept <- list()
  for (i in seq_len(settle + steps)) {
    for (half in 0:1) {
      me <- which(seq_len(n) %% 2 == half); other <- which(seq_len(n) %% 2 != half)
      a <- sample(other, length(me), TRUE); b <- sample(other, length(me), TRUE)
      reach <- if (i %% 10 == 0) 1 else 2.38 / sqrt(2 * d) * runif(1, 0.5, 1)
      to <- state$at[me, , drop = FALSE] + reach * (state$at[a, , drop = FALSE] - state$at[b, , drop = FALSE]) + rnorm(length(me) * d, 0, 1e-4)
      lp <- target(to, state$k[me])
      go <- log(runif(length(me))) < lp - state$lp[me]
      go[is.na(go)] <- FALSE
      state$at[me[go], ] <- to[go, ]; state$lp[me[go]] <- lp[go]
    }
    state <- gibbs(state, i)
    if (i > settle && i %% every == 0) kept[[length(kept) + 1]] <- list(at = state$at, k = state$k)
  }
  list(at = do.call(rbind, lapply(kept, `[[`, "at")), k = unlist(lapply(kept, `[[`, "k")))
}
normals <- function(at, mean, sd) rowSums(-0.5 * ((at - rep(mean, each = nrow(at))) / rep(sd, each = nrow(at)))^2)

number_line <- function(m, x, b) {
  p <- ncol(x)
  mean <- c(nums(lapply(m$prior, `[[`, "mean")), m$ln_sigma_prior$mean)
  sd <- c(nums(lapply(m$prior, `[[`, "sd")), m$ln_sigma_prior$sd)
  exact <- b[, 1] == b[, 2]
  target <- function(at, k) {
    line <- at[, 1:p, drop = FALSE] %*% t(x); s <- exp(at[, p + 1])
    lp <- normals(at, mean, sd)
    if (any(exact)) lp <- lp + rowSums(-0.5 * ((line[, exact, drop = FALSE] - rep(b[exact, 1], each = nrow(at))) / s)^2 - log(s))
    if (any(!exact)) {
      low <- -(line[, !exact, drop = FALSE] - rep(b[!exact, 1], each = nrow(at))) / s
      high <- -(line[, !exact, drop = FALSE] - rep(b[!exact, 2], each = nrow(at))) / s
      upper <- low > 0 # in the lower tail differences keep their digits
      down <- pnorm(ifelse(upper, -high, low), log.p = TRUE); up <- pnorm(ifelse(upper, -low, high), log.p = TRUE)
      lp <- lp + rowSums(up + log1p(-exp(down - up)))
    }
    lp
  }
  # from least squares on the middles, held by the prior
  y <- ifelse(is.infinite(b[, 1]), b[, 2], ifelse(is.infinite(b[, 2]), b[, 1], rowMeans(b)))
  s <- exp(m$ln_sigma_prior$mean)
  info <- crossprod(x) / s^2 + diag(1 / sd[1:p]^2, p)
  centre <- solve(info, crossprod(x, y) / s^2 + mean[1:p] / sd[1:p]^2)
  spread <- rbind(cbind(t(solve(chol(info))), 0), c(rep(0, p), 0.3))
  at <- matrix(rnorm(walkers * (p + 1)), walkers) %*% spread[c(seq_len(p), p + 1), ] + rep(c(centre, m$ln_sigma_prior$mean), each = walkers)
  walk(target, at)$at
}

# hermite is a Gauss-Hermite rule for a standard normal, by Golub and Welsch.
hermite <- function(n) {
  j <- matrix(0, n, n)
  for (i in seq_len(n - 1)) j[i, i + 1] <- j[i + 1, i] <- sqrt(i)
  e <- eigen(j, symmetric = TRUE)
  list(x = e$values, w = e$vectors[1, ]^2)
}

# A yes/no line is steepness times terms that have the prior as it stands.
yes_line <- function(m, x, yes, part, points, continuous) {
  p <- ncol(x)
  mean <- nums(lapply(m$prior, `[[`, "mean")); sd <- nums(lapply(m$prior, `[[`, "sd"))
  signs <- matrix_of(lapply(m$signs, function(s) nums(s$row) / s$soft))
  band <- if (is.null(m$nearly_band)) 0 else m$nearly_band
  # three answers by proportional odds, the share of each a difference of two logistics
  seen <- function(terms, steep) {
    line <- terms %*% t(x); wide <- steep * band
    lp <- rowSums(cbind(0, plogis(line[, yes], log.p = TRUE), plogis(-line[, !yes & !part] - wide, log.p = TRUE),
                        log(plogis(line[, part] + wide) - plogis(line[, part]))))
    if (!is.null(signs)) lp <- lp + rowSums(pnorm(terms %*% t(signs), log.p = TRUE))
    lp
  }
  start <- matrix(rnorm(walkers * p, mean, sd), walkers, p, byrow = TRUE)
  if (continuous) {
    target <- function(at, k) normals(at, c(mean, m$ln_steepness_prior$mean), c(sd, m$ln_steepness_prior$sd)) +
      seen(exp(at[, p + 1]) * at[, 1:p, drop = FALSE], exp(at[, p + 1]))
    at <- walk(target, cbind(start, rnorm(walkers, 0, m$ln_steepness_prior$sd)))$at
    return(exp(at[, p + 1]) * at[, 1:p, drop = FALSE])
  }
  rule <- hermite(points)
  steep <- exp(m$ln_steepness_prior$mean + m$ln_steepness_prior$sd * rule$x)
  choose <- function(lp) { # one of the points, by what each is believed
    w <- exp(lp - apply(lp, 1, max)); w <- t(apply(w, 1, cumsum)) / rowSums(w)
    1L + rowSums(w < runif(nrow(w)))
  }
  target <- function(at, k) normals(at, mean, sd) + seen(steep[k] * at, steep[k])
  gibbs <- function(state, i) {
    if (i %% 8 != 0) return(state)
    # the steepness anew, the unscaled terms held
    lp <- vapply(steep, function(s) seen(s * state$at, s), numeric(walkers))
    state$k <- choose(lp + rep(log(rule$w), each = walkers))
    # and anew, the terms themselves held
    terms <- steep[state$k] * state$at
    lp <- vapply(seq_along(steep), function(k) normals(terms, steep[k] * mean, steep[k] * sd) - p * log(steep[k]) + log(rule$w[k]) + seen(terms, steep[k]), numeric(walkers))
    state$k <- choose(lp)
    state$at <- terms / steep[state$k]
    state$lp <- target(state$at, state$k)
    state
  }
  out <- walk(target, start, gibbs)
  steep[out$k] * out$at
}

believe <- function(r, m, continuous) {
  trials <- telling(r, m$outcome)
  x <- with_beside(design(r, m$terms, trials), trials)
  if (nrow(x) != m$n || ncol(x) != length(m$terms)) stop("the trials of ", m$outcome, " are not found again")
  if (m$kind == "yes_no") return(yes_line(m, x, answers(trials, m$outcome), nearly(m, trials), r$rules$belief$steepness_points, continuous))
  b <- bounds(trials, m$outcome, m$score, now = TRUE)
  b <- if (m$kind == "measured") (b - m$centre) / m$scale else log(pmax(b, 0))
  number_line(m, x, b)
}

# ---- (c) the chance of a start and its limits

# extra is the variance of another day and of any of the cooks.
extra <- function(r, m, draws) {
  days <- unique(vapply(placed(r), function(t) t$day, ""))
  v <- if (length(days) == 1 && days != "") r$rules$belief$one_day_sd^2 else 0
  terms <- vapply(m$terms, function(t) paste(unlist(t), collapse = "*"), "")
  for (a in r$averaged) for (level in a$levels) {
    shift <- numeric(length(terms))
    for (l in a$levels) shift[terms == paste0(a$by, ": ", l$name)] <- -1 / length(a$levels)
    of <- terms == paste0(a$by, ": ", level$name)
    shift[of] <- shift[of] + 1
    v <- v + mean((draws[, seq_along(terms), drop = FALSE] %*% shift)^2) / length(a$levels)
  }
  v
}
held <- function(r, m) vapply(beside_names(r, m), function(name) {
  for (h in r$held_terms) if (h$term == name) return(h$value)
  for (v in r$variables) if (v$name == name) return((v$fixed_at - v$centre) / v$scale)
  stop("no value of ", name, " is held")
}, 0)
asked <- function(r, m) switch(m$outcome,
  hold_minutes = c(log(r$targets$hold_minutes$value), Inf),
  drained_percent = c(-Inf, log(r$targets$drained_percent$value)),
  c(if (is.null(m$asked$low)) -Inf else m$asked$low, if (is.null(m$asked$high)) Inf else m$asked$high))

# passes is the share of mixes that pass an outcome, for every draw: on the line, and with
# the part of the scatter that stays with the mix drawn too.
passes <- function(r, m, draws, mix) {
  f <- c(products(r, m$terms, mix), held(r, m)); p <- length(f)
  line <- drop(draws[, 1:p, drop = FALSE] %*% f)
  if (m$kind == "yes_no") {
    share <- plogis(if (m$outcome == "broke") -line else line)
    return(list(line = share, own = share))
  }
  v <- exp(2 * draws[, p + 1]); day <- extra(r, m, draws); own <- r$rules$belief$own_share; ask <- asked(r, m)
  between <- function(at, variance) pnorm((ask[2] - at) / sqrt(variance)) - pnorm((ask[1] - at) / sqrt(variance))
  list(line = between(line, v + day), own = between(line + rnorm(length(line)) * sqrt(own * v), (1 - own) * v + day), day = sqrt(day))
}
links_of <- function(r, s, draws) Map(function(m, d) passes(r, m, d[sample(nrow(d)), , drop = FALSE], s$mix), r$model, draws)
limits_of <- function(s, links, mean) {
  limits <- quantile(Reduce(`*`, lapply(links, `[[`, "own")), c(1 - s$chance$level, 1 + s$chance$level) / 2, names = FALSE)
  c(min(limits[1], mean), max(limits[2], mean))
}
chance_of <- function(links) prod(vapply(links, function(l) mean(l$line), 0))
limits_found <- function(r, draws) all(vapply(r$starts, function(s) {
  links <- links_of(r, s, draws)
  all(abs(limits_of(s, links, chance_of(links)) - c(s$chance$low, s$chance$high)) <= within$limit)
}, TRUE))
check_starts <- function(r, draws) {
  for (s in r$starts) {
    links <- links_of(r, s, draws)
    mean <- chance_of(links)
    limits <- limits_of(s, links, mean)
    for (i in seq_along(links)) {
      m <- r$model[[i]]
      passed <- 1 - sum(vapply(r$model[seq_len(i - 1)], function(b) s$fails[[b$outcome]], 0))
      say(sprintf("%s start, passes %s", s$aim, m$outcome), 1 - s$fails[[m$outcome]] / passed, mean(links[[i]]$line), within$closed)
    }
    say(paste(s$aim, "start, chance as searched"), s$chance$mean, mean, within$closed)
    say(paste(s$aim, "start, chance"), s$chance$mean_of_draws, mean, within$chance)
    say(paste(s$aim, "start, lower limit"), s$chance$low, limits[1], within$limit)
    say(paste(s$aim, "start, upper limit"), s$chance$high, limits[2], within$limit)
  }
}
check_lines <- function(r, draws) for (i in seq_along(r$model)) {
  m <- r$model[[i]]; p <- length(m$terms)
  d <- draws[[i]][, seq_len(p), drop = FALSE]
  say(paste("line of", m$outcome, "means, in SDs"), 0, max(abs(colMeans(d) - nums(m$mean)) / apply(d, 2, sd)), within$line)
  if (m$kind != "yes_no") say(paste("day_sd of", m$outcome), m$day_sd, sqrt(extra(r, m, draws[[i]])), 0.01)
}

run <- function(file, continuous) {
  r <- fromJSON(file, simplifyVector = FALSE)
  cat(sprintf("%s: %s, %d trials\n  %-58s %9s %9s %9s\n", file, r$status, length(placed(r)), "", "results", "rebuilt", "off"))
  set.seed(20)
  check_fits(r)
  draws <- lapply(r$model, function(m) believe(r, m, continuous))
  if (!once && !limits_found(r, draws)) {
    steps <<- 4 * steps
    draws <- lapply(r$model, function(m) believe(r, m, continuous))
    steps <<- steps / 4
  }
  check_lines(r, draws)
  check_starts(r, draws)
}
args <- commandArgs(TRUE)
once <- any(c("--long", "--once") %in% args)
if ("--long" %in% args) steps <- 4 * steps
for (file in grep("^--", args, invert = TRUE, value = TRUE)) run(file, "--continuous" %in% args)
if (misses > 0) cat(misses, "numbers are not found again\n")
quit(status = if (misses > 0) 1 else 0)
