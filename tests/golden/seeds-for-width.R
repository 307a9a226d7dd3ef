# Half-width that a test is going to give: the sum of every count's interval, weighed by dbinom; and the fewest seeds for a
# wanted one by looking at every number of seeds from 1 to 900.
source("tests/golden/write-table.R")
half_widths <- function(n, level, method) {
  s <- 0:n; tail <- (1 - level) / 2
  if (method == "wilson") { z <- qnorm(1 - tail); return(z * sqrt(s * (n - s) / n + z^2 / 4) / (n + z^2)) }
  shift <- if (method == "exact") c(0, 1) else c(0.5, 0.5)
  lower <- ifelse(s == 0, 0, qbeta(tail, s + shift[1], n - s + shift[2]))
  upper <- ifelse(s == n, 1, qbeta(tail, s + shift[2], n - s + shift[1], lower.tail = FALSE))
  (upper - lower) / 2
}
widths <- list(); fewest <- list()
for (method in c("wilson", "exact", "jeffreys")) {
  for (level in c(0.9, 0.95, 0.999)) for (n in c(1, 2, 5, 40, 101, 400, 2000)) {
    h <- half_widths(n, level, method)
    for (p in c(0, 1e-6, 0.3, 0.85, 0.99, 1)) widths[[length(widths) + 1]] <- data.frame(method = method, level = level, seeds = n, germination = p,
      expected = sum(dbinom(0:n, n, p) * h), widest = max(h))
  }
  by_n <- lapply(1:900, function(n) half_widths(n, 0.95, method))
  for (p in c(0, 0.5, 0.85, 0.95, 1)) {
    expected <- sapply(1:900, function(n) sum(dbinom(0:n, n, p) * by_n[[n]])); widest <- sapply(by_n, max)
    for (wanted in c(0.2, 0.1, 0.05, 0.04)) fewest[[length(fewest) + 1]] <- data.frame(method = method, germination = p, halfWidth = wanted,
      expected = which(expected <= wanted)[1], widest = which(widest <= wanted)[1])
  }
}
write_golden("seeds-for-width", list(widths = do.call(rbind, widths), fewest = do.call(rbind, fewest)))
