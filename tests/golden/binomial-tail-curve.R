# P(Bin(n, p) >= k) for the counts that sowing meets, up to five million seeds, from R's pbinom.
source("tests/golden/write-table.R")
found <- data.frame()
for (n in c(1, 2, 40, 400, 20000, 5e6)) {
  for (k in unique(pmax(1, round(n * c(0, 0.01, 0.5, 0.9, 1))))) {
    centre <- k / n
    spread <- sqrt(max(centre * (1 - centre), 1 / n) / n)
    for (p in unique(pmin(1, pmax(0, c(1e-9, centre + spread * c(-6, -2, -0.5, 0, 0.5, 2, 6), 1 - 1e-9))))) {
      found <- rbind(found, data.frame(successes = k, trials = n, probability = p, tail = pbinom(k - 1, n, p, lower.tail = FALSE)))
    }
  }
}
write_golden("binomial-tail-curve", list(tails = found))
