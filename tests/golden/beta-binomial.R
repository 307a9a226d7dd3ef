source("tests/golden/write-table.R")
out <- list()
for (n in c(1, 2, 5, 25, 50, 100, 400)) for (s in unique(pmin(n, c(0, 1, floor(n * c(0.1, 0.5, 0.9)), n - 1, n)))) for (p in c(0.001, 0.1, 0.5, 0.85, 0.99)) for (rho in c(0, 0.001, 0.01, 0.05, 0.2, 0.8)) {
  a <- p * (1 - rho) / rho; b <- (1 - p) * (1 - rho) / rho
  lp <- if (rho == 0) dbinom(s, n, p, log = TRUE) else lchoose(n, s) + lbeta(s + a, n - s + b) - lbeta(a, b)
  out[[length(out) + 1]] <- data.frame(successes = s, trials = n, mean = p, correlation = rho, logPmf = lp)
}
write_golden("beta-binomial", list(rows = do.call(rbind, out)))
