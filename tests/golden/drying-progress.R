# Writes drying-progress.json: simulated weighings of drying seed, R's nls() on them, and 90 % profile intervals for the
# level and for the time to the target by lm() inside optimize() and uniroot() (t^2 s^2 more squares than the best fit).
# Run from the repository root: Rscript tests/golden/drying-progress.R
source("tests/golden/write-table.R")
set.seed(20260314)
cases <- list( # dry matter g, start %, level %, rate per hour, hours, sd g, target %
  list(dry = 460, start = 12, settle = 5, rate = 0.03, hours = c(0, 10, 20, 30, 36), sd = 0.1, target = 7),
  list(dry = 460, start = 12, settle = 5, rate = 0.03, hours = c(0, 6, 12, 24, 30, 42, 50), sd = 0.3, target = 6),
  list(dry = 90, start = 14, settle = 8, rate = 0.05, hours = c(0, 8, 24, 32, 48, 56, 72), sd = 0.05, target = 6),
  list(dry = 1800, start = 16, settle = 9, rate = 0.01, hours = seq(0, 168, 24), sd = 0.5, target = 10),
  list(dry = 25, start = 10, settle = 6, rate = 0.2, hours = c(0, 1, 2, 4, 6, 8, 12), sd = 0.01, target = 6.3),
  list(dry = 460, start = 13, settle = 6, rate = 0.02, hours = c(0, 10, 20, 30, 44), sd = 0.4, target = 7))
level <- 0.9
curve <- deriv(~ P + A * exp(-k * t), c("P", "A", "k"), function(P, A, k, t) NULL) # exact slopes, so that nls() can converge
fixed_curve <- deriv(~ G + A * exp(-k * t), c("A", "k"), function(A, k, t, G) NULL)
round_to <- function(x, d) round(x / d) * d
least <- function(k_range, f) { grid <- seq(log(k_range[1]), log(k_range[2]), length.out = 400); v <- sapply(exp(grid), f); i <- which.min(v)
  optimize(function(l) f(exp(l)), c(grid[max(1, i - 1)], grid[min(400, i + 1)]), tol = 1e-12)$objective }
weighings <- list(); fits <- list()
for (i in seq_along(cases)) with(cases[[i]], {
  W0 <- dry / (1 - start / 100); P <- dry / (1 - settle / 100); step <- 0.01
  W <- round_to(P + (W0 - P) * exp(-rate * hours) + rnorm(length(hours), 0, sd), step); n <- length(W)
  startM <- 100 * (1 - dry / W[1]); Wt <- dry / (1 - target / 100); given <- P
  d <- data.frame(t = hours, W = W)
  ctl <- nls.control(tol = 1e-6, maxiter = 500)
  free <- nls(W ~ curve(P, A, k, t), d, start = list(P = P, A = W0 - P, k = rate), control = ctl)
  fixed <- nls(W ~ fixed_curve(A, k, t, given), d, start = list(A = W0 - P, k = rate), control = ctl)
  S <- deviance(free); k_range <- c(0.01 / max(hours), 40 / min(diff(hours)))
  allow <- qt((1 + level) / 2, n - 3)^2 * max(S / (n - 3), step^2 / 12)
  prof_P <- function(p) least(k_range, function(k) deviance(lm(I(W - p) ~ 0 + exp(-k * t), d))) - S - allow
  prof_t <- function(h) least(k_range, function(k) deviance(lm(I(W - Wt) ~ 0 + I(exp(-k * t) - exp(-k * h)), d))) - S - allow
  Pf <- coef(free)[["P"]]; lower_P <- if (prof_P(dry) <= 0) NA else uniroot(prof_P, c(dry, Pf), tol = 1e-11)$root
  upper_P <- if (prof_P(W[1]) <= 0) NA else uniroot(prof_P, c(Pf, W[1]), tol = 1e-11)$root
  best <- if (Wt > Pf) -log((Wt - Pf) / coef(free)[["A"]]) / coef(free)[["k"]] else NA
  lower_t <- NA; upper_t <- NA
  if (!is.na(best) && best > max(hours)) {
    lower_t <- if (prof_t(max(hours)) <= 0) max(hours) else uniroot(prof_t, c(max(hours), best), tol = 1e-10)$root
    far <- 100 * max(best, max(hours)); upper_t <- if (prof_t(far) <= 0) NA else uniroot(prof_t, c(best, far), tol = 1e-9)$root
  }
  weighings[[i]] <<- data.frame(case = i, hours = hours, weightG = W)
  fits[[i]] <<- data.frame(case = i, dryMatterG = dry, startMoisturePercent = startM, targetMoisturePercent = target, stepG = step,
    plateau = Pf, drop = coef(free)[["A"]], rate = coef(free)[["k"]], squares = S, givenPlateau = given, givenDrop = coef(fixed)[["A"]],
    givenRate = coef(fixed)[["k"]], givenSquares = deviance(fixed), lowerPlateau = lower_P, upperPlateau = upper_P,
    reachesHours = best, lowerHours = lower_t, upperHours = upper_t)
})
write_golden("drying-progress", list(weighings = do.call(rbind, weighings), fits = do.call(rbind, fits)), "20260314")
