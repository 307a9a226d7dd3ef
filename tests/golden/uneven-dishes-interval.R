source("tests/golden/write-table.R")
# Profile likelihood of the beta-binomial mean, by R's own optimize and uniroot. The likelihood is written with lbeta and
# choose, and with dbinom at rho = 0: another form than the product used in the program.
log_lik <- function(x, n, p, rho) {
  if (rho == 0) return(sum(dbinom(x, n, p, log = TRUE)))
  a <- p * (1 - rho) / rho; b <- (1 - p) * (1 - rho) / rho
  sum(lchoose(n, x) + lbeta(x + a, n - x + b) - lbeta(a, b))
}
# lbeta loses its digits where rho is tiny, so the search is in pieces: 0 itself, and decades of rho from 1e-6 on.
pieces <- log(c(1e-6, 1e-4, 1e-3, 3e-3, 1e-2, 0.03, 0.1, 0.3, 0.6, 0.9, 0.999999))
profile <- function(x, n, p) {
  best <- c(log_lik(x, n, p, 0), 0)
  for (i in seq_len(length(pieces) - 1)) {
    o <- optimize(function(l) log_lik(x, n, p, exp(l)), pieces[i + 0:1], maximum = TRUE, tol = 1e-9)
    if (o$objective > best[1]) best <- c(o$objective, exp(o$maximum))
  }
  best
}
interval <- function(x, n, level) {
  logit <- qlogis; f <- function(l) profile(x, n, plogis(l))[1]
  share <- pmin(pmax(x / n, 1e-4), 1 - 1e-4)
  o <- optimize(f, logit(range(share)) + c(-0.01, 0.01), maximum = TRUE, tol = 1e-9)
  cut <- qchisq(level, 1)
  g <- function(l) 2 * (o$objective - f(l)) - cut
  lo <- uniroot(g, c(o$maximum - 30, o$maximum), tol = 1e-12)$root
  hi <- uniroot(g, c(o$maximum, o$maximum + 30), tol = 1e-12)$root
  c(plogis(lo), plogis(hi), plogis(o$maximum), profile(x, n, plogis(o$maximum))[2])
}
tests <- list(
  list(c(100, 100, 100, 100), c(90, 88, 94, 85)), list(c(100, 100, 100, 100), c(90, 60, 94, 75)), list(c(50, 50), c(45, 38)),
  list(c(25, 25, 25, 25), c(25, 24, 25, 25)), list(c(10, 20, 70), c(1, 12, 66)), list(c(100, 50, 25), c(80, 40, 20)),
  list(rep(50, 8), c(40, 41, 39, 45, 36, 48, 30, 44)), list(c(100, 100, 100, 100), c(100, 100, 100, 99)), list(c(100, 100), c(2, 1)),
  list(rep(50, 4), c(46, 44, 49, 41)), list(rep(25, 4), c(0, 0, 1, 0)), list(rep(25, 4), c(25, 25, 10, 25)), list(c(200, 200), c(170, 180)),
  list(rep(25, 16), c(22, 21, 25, 18, 20, 23, 24, 22, 19, 25, 21, 22, 20, 24, 23, 17)), list(c(2, 2), c(1, 2)), list(c(400, 400), c(399, 400)), list(c(1, 30, 30), c(0, 28, 25)))
out <- do.call(rbind, lapply(tests, function(t) do.call(rbind, lapply(c(0.5, 0.8, 0.95, 0.999), function(level) {
  v <- interval(t[[2]], t[[1]], level)
  data.frame(trials = I(list(t[[1]])), successes = I(list(t[[2]])), level = level, lower = v[1], upper = v[2], mean = v[3], correlation = v[4])
}))))
# Wilson with effective seeds: prop.test takes counts that are not whole, and gives the same quadratic.
alike <- do.call(rbind, lapply(c(0, 0.01, 0.1, 1), function(rho) do.call(rbind, lapply(tests, function(t) {
  n <- t[[1]]; x <- t[[2]]; share <- sum(n) / sum(n * (1 + (n - 1) * rho))
  w <- suppressWarnings(prop.test(sum(x) * share, sum(n) * share, correct = FALSE)$conf.int)
  data.frame(trials = I(list(n)), successes = I(list(x)), correlation = rho, lower = w[1], upper = w[2])
}))))
write_golden("uneven-dishes-interval", list(rows = out, alike = alike))
