source("tests/golden/write-table.R")
tests <- list(
  list(c(100, 100, 100, 100), c(90, 88, 94, 85)), list(c(100, 100, 100, 100), c(90, 60, 94, 75)), list(c(50, 50), c(45, 38)),
  list(c(25, 25, 25, 25), c(25, 24, 25, 25)), list(c(10, 20, 70), c(1, 12, 66)), list(c(100, 50, 25), c(80, 40, 20)), list(rep(50, 8), c(40, 41, 39, 45, 36, 48, 30, 44)),
  list(c(100, 100), c(100, 0)), list(c(400, 400), c(399, 400)))
# The correlation comes from the expected sum of squares written as the trace of the quadratic form times the covariance
# of beta-binomial proportions, solved for rho.
correlation <- function(n, s) {
  N <- sum(n); k <- length(n); p <- sum(s) / N; q <- 1 - p
  A <- diag(n) - outer(n, n) / N
  expected <- function(rho) sum(diag(A %*% diag(p * q * (1 + (n - 1) * rho) / n)))
  seen <- as.numeric(t(s / n) %*% A %*% (s / n))
  rho <- (seen - expected(0)) / (expected(1) - expected(0))
  min(1, max(0, rho))
}
write_golden("heterogeneity", list(rows = do.call(rbind, lapply(tests, function(t) {
  h <- suppressWarnings(prop.test(t[[2]], t[[1]], correct = FALSE))
  data.frame(trials = I(list(t[[1]])), normal = I(list(t[[2]])), chiSquare = unname(h$statistic), degreesOfFreedom = unname(h$parameter), pValue = h$p.value, correlation = correlation(t[[1]], t[[2]]))
}))))
