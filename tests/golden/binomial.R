source("tests/golden/write-table.R")
out <- list()
for (n in c(1, 2, 5, 10, 25, 50, 100, 400, 1000, 10000, 100000)) for (s in unique(pmin(n, c(0, 1, floor(n * c(0.1, 0.5, 0.9)), n - 1, n)))) for (p in c(1e-6, 0.01, 0.1, 0.5, 0.85, 0.99, 0.999999)) {
  out[[length(out) + 1]] <- data.frame(successes = s, trials = n, probability = p, logPmf = dbinom(s, n, p, log = TRUE),
    atMost = pbinom(s, n, p), atLeast = pbinom(s - 1, n, p, lower.tail = FALSE))
}
write_golden("binomial", list(rows = do.call(rbind, out)))
