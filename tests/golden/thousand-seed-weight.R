# Writes thousand-seed-weight.json: mean, var, sd and cv of replicate weights by R, and the second round's mean.
# Run from the repository root: Rscript tests/golden/thousand-seed-weight.R
source("tests/golden/write-table.R")
set.seed(20260317)
sets <- list(c(0.2224, 0.2134, 0.2130, 0.2116, 0.2145, 0.2071, 0.2116, 0.2125), c(5, 5.1), rep(2.5, 8),
             round(rnorm(8, 5.2, 0.4), 3), round(rnorm(16, 5.2, 0.4), 3), round(rnorm(16, 0.031, 0.003), 4),
             c(round(rnorm(15, 12, 0.3), 2), 14.5), round(rnorm(8, 260, 3), 1), 1e5 + c(0.1, 0.2, 0.3, 0.4))
out <- do.call(rbind, lapply(sets, function(x) { keep <- abs(x - mean(x)) <= 2 * sd(x)
  data.frame(weightsG = I(list(x)), mean = mean(x), variance = var(x), sd = sd(x), cv = 100 * sd(x) / mean(x),
             keptMean = mean(x[keep]), dropped = sum(!keep)) }))
write_golden("thousand-seed-weight", list(rows = out), "20260317")
