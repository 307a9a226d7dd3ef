source("tests/golden/write-table.R")
# Names say what each data set is for. Convergence is asked for far below R's usual 1e-8, so that the table is better
# than the tolerance it is compared at.
data <- list(
  finney71 = list(c(log10(10.2), log10(7.7), log10(5.1), log10(3.8), log10(2.6)), c(44, 42, 24, 16, 6), c(50, 49, 46, 48, 50)),
  ageing_years = list(c(0, 2, 5, 8, 12), c(98, 95, 88, 70, 41), c(100, 100, 100, 100, 100)),
  ageing_days = list(c(0, 730, 1826, 2922, 4383), c(98, 95, 88, 70, 41), c(100, 100, 100, 100, 100)),
  calendar_day_numbers = list(c(18262, 19000, 19700, 20400), c(195, 188, 170, 122), c(200, 200, 200, 200)),
  two_points = list(c(0, 6), c(97, 81), c(100, 100)),
  two_points_reversed = list(c(6, 0), c(97, 81), c(100, 100)),
  single_seeds = list(c(1, 2, 3, 4, 5, 6, 7, 8), c(1, 1, 1, 0, 1, 0, 0, 0), rep(1, 8)),
  nearly_flat = list(c(0, 1, 2, 3), c(90, 91, 89, 90), c(100, 100, 100, 100)),
  rising = list(c(0, 1, 2, 3), c(10, 30, 62, 88), c(100, 100, 100, 100)),
  unequal_trials = list(c(0, 3, 4, 9, 15), c(385, 22, 180, 30, 2), c(400, 25, 200, 50, 10)),
  contradictory = list(c(0, 1, 2, 3), c(50, 95, 20, 88), c(100, 100, 100, 100)),
  large_counts = list(c(0, 1, 2, 3), c(99990, 99500, 91000, 60000), rep(1e5, 4)),
  few_alive = list(c(0, 10, 20), c(3, 1, 0), c(1000, 1000, 1000))
)
fits <- list()
for (name in names(data)) {
  d <- data[[name]]; x <- d[[1]]; s <- d[[2]]; n <- d[[3]]
  m <- glm(cbind(s, n - s) ~ x, family = binomial(probit), control = glm.control(epsilon = 1e-15, maxit = 2000))
  v <- summary(m)$cov.unscaled
  fits[[name]] <- data.frame(name = name, x = I(list(x)), successes = I(list(s)), trials = I(list(n)), intercept = unname(coef(m)[1]), slope = unname(coef(m)[2]),
    v11 = v[1, 1], v12 = v[1, 2], v22 = v[2, 2], deviance = deviance(m), pearsonChiSquare = sum(residuals(m, "pearson")^2), degreesOfFreedom = df.residual(m))
}

# Near separation glm holds 1 - P as one minus a rounded P and loses its digits, so these fits are found another way:
# by bisection on the two score equations, both tails in logarithms.
near <- list(
  near_separation_one_dead = list(c(0, 1, 2, 3), c(399, 400, 1, 0), c(400, 400, 400, 400)),
  near_separation_far = list(c(0, 1, 100, 101), c(400, 399, 1, 0), c(400, 400, 400, 400)),
  near_separation_thin = list(c(0, 1, 1.001, 2), c(100, 99, 1, 0), c(100, 100, 100, 100))
)
root <- function(f, interval) uniroot(f, interval, tol = 1e-15, maxiter = 5000)$root
for_name <- function(name) {
  d <- near[[name]]; x <- d[[1]]; s <- d[[2]]; n <- d[[3]]; f <- n - s
  centre <- sum(x * n) / sum(n); scale <- max(abs(x - centre)); z <- (x - centre) / scale
  ratio <- function(eta, lower) exp(dnorm(eta, log = TRUE) - pnorm(eta, lower.tail = lower, log.p = TRUE))
  score <- function(a, b) { eta <- a + b * z; s * ratio(eta, TRUE) - f * ratio(eta, FALSE) }
  best_a <- function(b) root(function(a) sum(score(a, b)), c(-60, 60) * (1 + abs(b)))
  b <- root(function(b) sum(score(best_a(b), b) * z), c(-10000, 0)); a <- best_a(b); eta <- a + b * z
  w <- n * ratio(eta, TRUE) * ratio(eta, FALSE)
  X <- cbind(1, x); v <- solve(t(X) %*% (w * X))
  logP <- pnorm(eta, log.p = TRUE); logQ <- pnorm(eta, lower.tail = FALSE, log.p = TRUE)
  dev <- 2 * sum(ifelse(s > 0, s * (log(s / n) - logP), 0) + ifelse(f > 0, f * (log(f / n) - logQ), 0))
  data.frame(name = name, x = I(list(x)), successes = I(list(s)), trials = I(list(n)), intercept = a - b * centre / scale, slope = b / scale, v11 = v[1, 1], v12 = v[1, 2], v22 = v[2, 2],
    deviance = dev, pearsonChiSquare = sum((s * exp(logQ) - f * exp(logP))^2 / (n * exp(logP + logQ))), degreesOfFreedom = length(x) - 2)
}
write_golden("probit-regression", list(fits = do.call(rbind, fits), nearSeparation = do.call(rbind, lapply(names(near), for_name))))
