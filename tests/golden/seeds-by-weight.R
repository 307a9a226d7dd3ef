# Writes seeds-by-weight.json: ends of the interval for the seeds of a packet by uniroot() on the pivot (not the solved
# quadratic), and grams for a number of seeds. Run from the repository root: Rscript tests/golden/seeds-by-weight.R
source("tests/golden/write-table.R")
samples <- list(c(0.2224, 0.2134, 0.2130, 0.2116, 0.2145, 0.2071, 0.2116, 0.2125), c(5.31, 5.02, 5.18, 5.25), c(26.1, 25.2),
                rep(0.31, 8), c(2.1, 3.4, 2.6, 1.9), c(1.2, 2.9))
grid <- expand.grid(sample = seq_along(samples), n = c(1, 50, 100), packet = c(0.5, 12), d1 = c(0, 0.01), d2 = c(0, 0.1), level = c(0.8, 0.95))
one <- function(i, n, packet, d1, d2, level) {
  x <- samples[[i]]; r <- length(x); W <- packet * mean(x); m <- mean(x) / n; s2 <- var(x); t <- qt((1 + level) / 2, r - 1)
  V <- function(N) s2 / n * N + N^2 * (s2 / r + d1^2 / 12) / n^2 + d2^2 / 12
  f <- function(N) (W - N * m)^2 - t^2 * V(N)
  N0 <- W / m; bounded <- m^2 > t^2 * (s2 / r + d1^2 / 12) / n^2
  lower <- upper <- NA
  if (bounded) {
    if (f(N0) == 0) lower <- upper <- N0 else {
      lower <- if (f(0) <= 0) 0 else uniroot(f, c(0, N0), tol = 1e-12 * N0)$root
      hi <- 2 * N0; while (f(hi) <= 0) hi <- 2 * hi
      upper <- uniroot(f, c(N0, hi), tol = 1e-12 * N0)$root }
  }
  N <- max(1, round(N0)); tu <- qt(level, r - 1)
  c(W, lower, upper, N, N * m + tu * sqrt(V(N)))
}
out <- t(mapply(one, grid$sample, grid$n, grid$packet, grid$d1, grid$d2, grid$level))
table <- data.frame(weightsG = I(samples[grid$sample]), seedsPerReplicate = grid$n, sampleStepG = grid$d1, stepG = grid$d2,
                   level = grid$level, weightG = out[, 1], lower = out[, 2], upper = out[, 3], seeds = out[, 4], gramsG = out[, 5])
write_golden("seeds-by-weight", list(rows = table))
