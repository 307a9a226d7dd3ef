# Writes moisture-settling.json: the temperature at which air of a humidity brings seed to a moisture, found by R's
# uniroot on Cromarty's form (from memory). Run from the repository root: Rscript tests/golden/moisture-settling.R
source("tests/golden/write-table.R")
fresh <- function(R, T, Do) { d <- (1 - Do) * sqrt(-440 * log1p(-R)) / (1.1 + T / 90); 100 * d / (100 + d) }
grid <- expand.grid(moisturePercent = c(3, 4.5, 6, 8, 11, 14), relativeHumidity = c(0.05, 0.15, 0.3, 0.5, 0.75, 0.95),
                    oilFraction = c(0, 0.02, 0.2, 0.45))
solve_one <- function(m, R, Do) {
  f <- function(T) fresh(R, T, Do) - m
  if (f(80) > 0) return(c(NA, 1))
  if (f(-60) < 0) return(c(NA, -1))
  c(uniroot(f, c(-60, 80), tol = 1e-13)$root, 0)
}
out <- t(mapply(solve_one, grid$moisturePercent, grid$relativeHumidity, grid$oilFraction))
grid$temperatureC <- out[, 1]; grid$beyond <- out[, 2]
write_golden("moisture-settling", list(rows = grid))
