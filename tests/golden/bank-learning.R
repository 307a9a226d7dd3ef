# Golden values of learning from a bank's own tests: marginal log-likelihoods of crops' tests by plain sums over a dense grid of
# (K, b) (steps of 0.0125), and the most plausible belief by R's optim from three starts, with its covariance by optimHess.
# Nothing here is shared with the program. Run from the repository root: Rscript tests/golden/bank-learning.R
source("tests/golden/write-table.R")
test <- function(...) matrix(c(...), ncol = 3, byrow = TRUE) # probits lost, germinated, sown
lot <- function(tests, rho = 0) list(tests = tests, rho = rho)
own <- c(1.75, .75, 0, .5); doubtful <- c(1.75, .75, .3, .9)
crops <- list(
  ordinary = list(prior = own, m = 5, lots = list(
    lot(test(0, 96, 100, .4, 84, 100, .9, 55, 100)), lot(test(0, 91, 100, .5, 73, 100)), lot(test(.05, 98, 100, .6, 90, 100, 1.1, 71, 100)),
    lot(test(0, 88, 100, .3, 80, 100, .7, 47, 100)), lot(test(.02, 95, 100, .8, 66, 100)), lot(test(.1, 93, 100, .5, 85, 100)))),
  corners = list(prior = doubtful, m = 5, lots = list(
    lot(test(.5, 0, 50)), lot(test(.2, 100, 100, .9, 100, 100)), lot(test(0, 93, 100, 0, 90, 100)), lot(test(1, 95, 100, 1.05, 75, 100)),
    lot(test(0, 60, 100, .5, 80, 100, 1, 95, 100)), lot(test(0, 50, 50)), lot(test(12, 30, 100)), lot(test(.3, 1, 1)))),
  uneven = list(prior = own, m = 3, lots = list(
    lot(test(0, 96, 100, .4, 84, 100, .9, 55, 100), .05), lot(test(0, 91, 100, .5, 73, 100)), lot(test(.05, 98, 100, .6, 70, 100), .2),
    lot(test(0, 100, 100, 1.2, 0, 100), .1))),
  large = list(prior = own, m = 5, lots = list(
    lot(test(0, 388, 400, .5, 330, 400, 1, 190, 400, 1.5, 60, 400)), lot(test(0, 372, 400, .5, 290, 400, 1, 150, 400)),
    lot(test(0, 395, 400, .4, 371, 400, 1.1, 220, 400)), lot(test(.1, 360, 400, .7, 235, 400, 1.4, 70, 400)))),
  fresh = list(prior = own, m = 5, lots = list(lot(test(0, 96, 100)), lot(test(0, 78, 100, 0, 80, 100)), lot(test(0, 99, 100)), lot(test(0, 200, 200)))))
step <- .0125; K <- seq(-9, 12, step); B <- seq(-8, 8, step)
loglik <- function(eta, s, n, rho) {
  if (rho == 0) return((if (s > 0) s * pnorm(eta, log.p = TRUE) else 0) + (if (n > s) (n - s) * pnorm(-eta, log.p = TRUE) else 0))
  theta <- (1 - rho) / rho
  rising <- function(loga, m) if (m == 0) 0 else loga + lgamma(exp(loga) + m) - lgamma(exp(loga) + 1)
  rising(log(theta) + pnorm(eta, log.p = TRUE), s) + rising(log(theta) + pnorm(-eta, log.p = TRUE), n - s)
}
table_of <- function(lot) {
  logs <- matrix(0, length(K), length(B))
  for (i in seq_len(nrow(lot$tests))) logs <- logs + loglik(outer(K, exp(B) * lot$tests[i, 1], "-"), lot$tests[i, 2], lot$tests[i, 3], lot$rho)
  top <- max(logs); list(top = top, values = exp(logs - top))
}
marginal <- function(tables, p) { # p: mean of K, log sd of K, mean of b, log sd of b
  wk <- dnorm(K, p[1], exp(p[2])) * step; wb <- dnorm(B, p[3], exp(p[4])) * step
  sum(sapply(tables, function(t) t$top + log(as.numeric(wk %*% t$values %*% wb))))
}
pseudo <- function(p, prior, m) {
  one <- function(mean, logsd, mean0, sd0) -m * (logsd + (sd0^2 + (mean - mean0)^2) / (2 * exp(2 * logsd)) - log(sd0) - .5)
  one(p[1], p[2], prior[1], prior[2]) + one(p[3], p[4], prior[3], prior[4])
}
marginals <- NULL; best <- NULL
for (name in names(crops)) {
  crop <- crops[[name]]; tables <- lapply(crop$lots, table_of); prior <- crop$prior
  start <- c(prior[1], log(prior[2]), prior[3], log(prior[4]))
  for (move in list(c(0, 0, 0, 0), c(-.8, -.9, .7, -.9), c(1, .6, -.9, .4), c(.3, -1.2, -.7, -1.1))) {
    p <- start + move
    marginals <- rbind(marginals, data.frame(crop = name, initialMean = p[1], initialSd = exp(p[2]), rateMean = p[3], rateSd = exp(p[4]), logLikelihood = marginal(tables, p)))
  }
  target <- function(p) -(marginal(tables, p) + pseudo(p, prior, crop$m))
  fits <- lapply(list(c(0, 0, 0, 0), c(-.6, -.4, .6, -.4), c(.4, .3, -.6, .3)), function(move) {
    fit <- optim(start + move, target, method = "BFGS", control = list(reltol = 1e-14, maxit = 500, ndeps = rep(1e-4, 4)))
    optim(fit$par, target, method = "Nelder-Mead", control = list(reltol = 1e-15, maxit = 2000))
  })
  values <- sapply(fits, `[[`, "value"); message(name, " spread of optima: ", format(diff(range(values))), " of parameters: ", format(max(sapply(fits, function(f) max(abs(f$par - fits[[1]]$par))))))
  p <- fits[[which.min(values)]]$par
  covariance <- solve(optimHess(p, target, control = list(ndeps = rep(2e-3, 4))))
  half <- optim(start[1:2], function(q) target(c(q, start[3:4])), method = "BFGS", control = list(reltol = 1e-14, ndeps = rep(1e-4, 2)))$par
  best <- rbind(best, data.frame(crop = name, initialMean = p[1], initialSd = exp(p[2]), rateMean = p[3], rateSd = exp(p[4]), logPosterior = -min(values),
    seInitialMean = sqrt(covariance[1, 1]), seInitialLogSd = sqrt(covariance[2, 2]), seRateMean = sqrt(covariance[3, 3]), seRateLogSd = sqrt(covariance[4, 4]),
    correlationOfMeans = cov2cor(covariance)[1, 3], initialMeanAlone = half[1], initialSdAlone = exp(half[2])))
}
inputs <- do.call(rbind, lapply(names(crops), function(name) do.call(rbind, lapply(seq_along(crops[[name]]$lots), function(i) {
  l <- crops[[name]]$lots[[i]]; p <- crops[[name]]$prior
  data.frame(crop = name, lot = i, rho = l$rho, probitsLost = l$tests[, 1], germinated = l$tests[, 2], sown = l$tests[, 3],
    priorInitialMean = p[1], priorInitialSd = p[2], priorRateMean = p[3], priorRateSd = p[4], countsAs = crops[[name]]$m, row.names = NULL)
}))))
write_golden("bank-learning", list(tests = inputs, marginals = marginals, best = best))
