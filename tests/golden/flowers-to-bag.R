# Writes flowers-to-bag.json: chance of enough seed from bagged flowers, fruits binomial, seeds of k fruits gamma.
# Run from the repository root: Rscript tests/golden/flowers-to-bag.R
source("tests/golden/write-table.R")
chance <- function(flowers, seeds, success, mean, sd) {
  k <- seq_len(flowers)
  holds <- if (sd == 0) as.numeric(k * mean >= seeds - 1e-9) else pgamma(seeds, shape = k * mean^2 / sd^2, rate = mean / sd^2, lower.tail = FALSE)
  sum(dbinom(k, flowers, success) * holds)
}
grid <- expand.grid(flowers = c(1, 3, 20, 150), seeds = c(1, 50, 500, 5000), success = c(0.05, 0.5, 0.9, 1), seedsPerFruit = c(1, 12, 60), seedsPerFruitSd = c(0, 0.5, 20))
grid$chance <- mapply(chance, grid$flowers, grid$seeds, grid$success, grid$seedsPerFruit, grid$seedsPerFruitSd)
fewest <- expand.grid(seeds = c(1, 100, 2000), success = c(0.1, 0.6, 1), seedsPerFruit = c(5, 58), seedsPerFruitSd = c(0, 15), assurance = c(0.5, 0.95, 0.999), plants = c(1, 20))
least <- function(seeds, success, mean, sd, a) { n <- 1; while (chance(n, seeds, success, mean, sd) < a - 1e-12) n <- n + 1; n }
fewest$forSeeds <- mapply(least, fewest$seeds, fewest$success, fewest$seedsPerFruit, fewest$seedsPerFruitSd, fewest$assurance)
all_bear <- function(plants, success, a) { k <- 1; while ((1 - (1 - success)^k)^plants < a - 1e-12) k <- k + 1; k }
fewest$perPlantForAll <- mapply(all_bear, fewest$plants, fewest$success, fewest$assurance)
write_golden("flowers-to-bag", list(chances = grid, fewest = fewest))
