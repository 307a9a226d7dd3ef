source("tests/golden/write-table.R")
x <- c(-37.5, -37, -30, -20, -12, -8, -6, -5, -4, -3, -2.5, -2, -1.5, -1, -0.75, -0.5, -0.25, -0.1, -1e-3, -1e-8, -1e-15, 0)
x <- sort(unique(c(x, -x)))
far <- c(-1e6, -1e4, -1000, -100, -50, -40)
p <- c(1e-300, 1e-250, 1e-200, 1e-150, 1e-100, 1e-50, 1e-30, 1e-20, 1e-16, 1e-12, 1e-10, 1e-8, 1e-6, 1e-4, 1e-3, 0.005, 0.01, 0.025,
       0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.45, 0.49, 0.499999, 0.5, 0.500001, 0.51, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.975, 0.99, 0.999, 0.9999, 1 - 1e-6, 1 - 1e-9, 1 - 1e-12)
write_golden("normal-distribution", list(
  values = data.frame(x = x, lower = pnorm(x), upper = pnorm(x, lower.tail = FALSE), logLower = pnorm(x, log.p = TRUE), density = dnorm(x), logDensity = dnorm(x, log = TRUE)),
  far = data.frame(x = far, logLower = pnorm(far, log.p = TRUE), logDensity = dnorm(far, log = TRUE)),
  quantiles = data.frame(probability = p, x = qnorm(p))
))
