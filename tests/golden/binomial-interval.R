source("tests/golden/write-table.R")
trials <- c(1, 2, 3, 5, 8, 10, 20, 25, 40, 50, 100, 200, 400, 1000, 10000, 100000)
levels <- c(0.5, 0.8, 0.9, 0.95, 0.99, 0.999, 1 - 2^-20, 1 - 2^-40)
out <- list()
for (n in trials) for (s in unique(pmin(n, pmax(0, c(0, 1, 2, round(n * c(0.1, 0.25, 0.5, 0.8, 0.85, 0.9, 0.98)), n - 2, n - 1, n))))) for (level in levels) {
  wilson <- suppressWarnings(prop.test(s, n, conf.level = level, correct = FALSE)$conf.int)
  exact <- binom.test(s, n, conf.level = level)$conf.int
  tail <- (1 - level) / 2
  jeffreys <- c(if (s == 0) 0 else qbeta(tail, s + 0.5, n - s + 0.5), if (s == n) 1 else qbeta(tail, s + 0.5, n - s + 0.5, lower.tail = FALSE))
  # prop.test takes the lower bound as a difference; where few of many succeed it keeps too few digits, so the lower
  # bound here comes from the other end by the product of the two roots of the same quadratic.
  z2 <- qnorm(tail)^2
  wilson[1] <- if (s == 0) 0 else (s / n)^2 / ((1 + z2 / n) * wilson[2])
  out[[length(out) + 1]] <- data.frame(successes = s, trials = n, level = level,
    wilsonLower = wilson[1], wilsonUpper = wilson[2], exactLower = exact[1], exactUpper = exact[2], jeffreysLower = jeffreys[1], jeffreysUpper = jeffreys[2])
}
write_golden("binomial-interval", list(intervals = do.call(rbind, out)))
