# What reaches a goal: the moistest seed at a temperature, the warmest store at a moisture, by uniroot on the equation with
# its limits: moisture from the low limit to 15 % (14 % below 0 C), temperatures from -30 (0 above 14 %) to 45 C.
# DERIVED, not published worked examples. Run from the repository root: Rscript tests/golden/storage-goal.R
source("tests/golden/write-table.R")
seeds <- data.frame(
  crop = c("barley", "onion", "soybean", "cotton", "maize", "potato", "flat in moisture", "no square", "turns at -10", "square only"),
  KE = c(9.983, 6.975, 7.748, 9.240, 9.993, 8.037, 4, 8, 8, 8), CW = c(5.896, 3.470, 3.979, 5.190, 5.993, 5.152, 0, 5, 5, 5),
  CH = c(.040, .040, .053, .03965, .0322, .0322, .04, .06, .02, 0), CQ = c(.000428, .000428, .000228, .000426, .000454, .000454, .0004, 0, .001, .0008),
  low = c(4.2, 3.3, 3.9, 3.6, 4.1, 4.5, 4, 4, 4, 4), stringsAsFactors = FALSE)
sigma <- function(k, m, t) 10^(k$KE - k$CW * log10(pmax(m, k$low)) - k$CH * t - k$CQ * t^2)
root <- function(f, from, to) uniroot(f, c(from, to), tol = 1e-15, maxiter = 10000)$root
falls <- rbind(c(.95, .85), c(.999, .5), c(.9, .899))
years <- c(.01, 1, 10, 31, 100, 1000, 1e5)

moist <- merge(seeds, expand.grid(temperature = c(-25, -18, 0, 5, 20, 40), fall = 1:3, years = years))
moist$initial <- falls[moist$fall, 1]; moist$wanted <- falls[moist$fall, 2]
moist$answer <- NA; moist$kind <- ""
for (i in seq_len(nrow(moist))) {
  k <- moist[i, ]; target <- log(k$years * 365.25 / (qnorm(k$initial) - qnorm(k$wanted))); most <- if (k$temperature < 0) 14 else 15
  above <- function(m) log(sigma(k, m, k$temperature)) - target
  moist$kind[i] <- if (above(k$low) < 0) "none" else if (above(most) >= 0) "all" else "some"
  moist$answer[i] <- switch(moist$kind[i], none = NA, all = most, some = root(above, k$low, most))
}
warm <- merge(seeds, expand.grid(moisture = c(2, 4, 6, 10, 14, 14.5, 15), fall = 1:3, years = years))
warm$initial <- falls[warm$fall, 1]; warm$wanted <- falls[warm$fall, 2]
warm$answer <- NA; warm$kind <- ""
for (i in seq_len(nrow(warm))) {
  k <- warm[i, ]; target <- log(k$years * 365.25 / (qnorm(k$initial) - qnorm(k$wanted))); coldest <- if (k$moisture > 14) 0 else -30
  above <- function(t) log(sigma(k, k$moisture, t)) - target
  # The best temperature by search, not by the formula of the turning point.
  grid <- seq(coldest, 45, by = .001); best <- grid[which.max(sigma(k, k$moisture, grid))]
  warm$kind[i] <- if (above(best) < 0) "none" else if (above(45) >= 0) "all" else "some"
  warm$answer[i] <- switch(warm$kind[i], none = NA, all = 45, some = root(above, best, 45))
}
keep <- c("crop", "initial", "wanted", "years", "kind", "answer")
write_golden("storage-goal", list(seeds = seeds, moist = moist[c("temperature", keep)], warm = warm[c("moisture", keep)]))
