source("tests/golden/write-table.R")
# P(range > r) of independent binomial proportions. Small shapes by going through every outcome one by one; equal shapes
# of any size by the order-statistics formula.
by_outcomes <- function(trials, p, r) {
  count <- as.matrix(expand.grid(lapply(trials, function(n) 0:n)))
  chance <- Reduce(`*`, lapply(seq_along(trials), function(i) dbinom(count[, i], trials[i], p)))
  share <- sweep(count, 2, trials, "/")
  range <- do.call(pmax, as.data.frame(share)) - do.call(pmin, as.data.frame(share))
  sapply(r, function(limit) sum(chance[range > limit + 1e-9]))
}
by_formula <- function(trials, p, r) {
  n <- trials[1]; k <- length(trials); F <- function(x) pbinom(x, n, p); m <- 0:n
  sapply(r, function(limit) { d <- floor(n * limit + 1e-7); 1 - sum((F(m + d) - F(m - 1))^k - (F(m + d) - F(m))^k) })
}
chance_rows <- function(how, shapes) do.call(rbind, lapply(shapes, function(trials) do.call(rbind, lapply(c(0.1, 0.5, 0.85, 0.98), function(p) {
  r <- c(0, 0.05, 0.1, 0.2, 0.4)
  data.frame(trials = I(rep(list(trials), length(r))), probability = p, range = r, exceedance = how(trials, p, r))
}))))
enumerated <- chance_rows(by_outcomes, list(c(10, 10), c(10, 20), c(25, 25, 25), c(20, 30, 50), c(10, 15, 20, 12)))
computed <- chance_rows(by_formula, list(c(50, 50), c(50, 50, 50), rep(25, 4), rep(50, 4), rep(100, 4), rep(25, 8), c(400, 400)))

tolerated <- function(trials, p) { r <- 0:100; chance <- by_formula(trials, p, r / 100); r[which(chance <= 0.025)[1]] }
shapes <- list(c(100, 100), rep(100, 4), rep(25, 4), rep(50, 4), rep(50, 3), c(50, 50), rep(100, 3), rep(25, 8), rep(20, 5))
tolerances <- do.call(rbind, lapply(shapes, function(trials) do.call(rbind, lapply(c(0, 0.02, 0.1, 0.2, 0.5, 0.52, 0.6, 0.76, 0.8, 0.88, 0.9, 0.96, 0.98, 1), function(p) {
  normal <- round(p * sum(trials)); each <- normal %/% length(trials); more <- normal %% length(trials)
  counts <- each + (seq_along(trials) <= more)
  data.frame(trials = I(list(trials)), normal = I(list(counts)), toleratedRange = tolerated(trials, normal / sum(trials)))
}))))
write_golden("replicate-tolerance", list(enumerated = enumerated, computed = computed, tolerances = tolerances))
