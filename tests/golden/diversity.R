# Writes diversity.json: chances of keeping an allele, plants to keep it, the exact chain of binomial draws over generations,
# and the loss of variety from unequal parents by simulation.
# Run from the repository root: Rscript tests/golden/diversity.R
source("tests/golden/write-table.R")
keeping <- expand.grid(plants = c(1, 2, 10, 37, 100, 1000), frequency = c(1e-9, 1e-3, 0.01, 0.05, 0.3, 0.5, 0.999), inbreeding = c(0, 0.3, 1))
# The chance that a plant has no copy is the frequency of the genotype without it: q^2 + F p q.
keeping$chance <- with(keeping, { q <- 1 - frequency; lacking <- log1p(-frequency) + log1p(-frequency + inbreeding * frequency); -expm1(plants * lacking) })
exact <- with(keeping, 1 - ((1 - frequency)^2 + inbreeding * frequency * (1 - frequency))^plants)
stopifnot(max(abs(exact - keeping$chance)) < 1e-12)
needed <- expand.grid(frequency = c(0.01, 0.03, 0.05, 0.1, 0.5), assurance = c(0.5, 0.9, 0.95, 0.99), inbreeding = c(0, 0.5, 1), genes = c(1, 10, 150))
fewest <- function(p, a, f, g) { q <- 1 - p; lacking <- q^2 + f * p * q; n <- 1; while ((1 - lacking^n)^g < a - 1e-12) n <- n + 1; n }
needed$plants <- mapply(fewest, needed$frequency, needed$assurance, needed$inbreeding, needed$genes)
chain <- function(gametes, p, generations) {
  step <- outer(0:gametes, 0:gametes, function(i, j) dbinom(j, gametes, i / gametes))
  copies <- dbinom(0:gametes, gametes, p)
  out <- numeric(generations)
  for (g in seq_len(generations)) { out[g] <- 1 - copies[1]; copies <- as.vector(copies %*% step) }
  out
}
cases <- expand.grid(gametes = c(1, 2, 7, 40, 200), frequency = c(0.001, 0.05, 0.5, 0.9))
staying <- do.call(rbind, lapply(seq_len(nrow(cases)), function(i) data.frame(gametes = cases$gametes[i], frequency = cases$frequency[i],
  generation = c(1, 2, 5, 20), chance = chain(cases$gametes[i], cases$frequency[i], 20)[c(1, 2, 5, 20)])))
# Loss of variety in one generation, drawn: two gametes of the next seed carry one parental copy twice with chance 1/(2 Ne),
# where each parent has two copies of its own.
set.seed(20111)
shares <- list(equal = list(seed = rep(1, 10), pollen = rep(1, 10)), unequal = list(seed = c(60, 20, 10, 5, 5), pollen = rep(1, 5)),
               sexes = list(seed = c(1, 1, 1, 1, 1, 1, 0, 0), pollen = c(0, 0, 0, 0, 0, 0, 1, 1)), selfing = list(seed = c(8, 1, 1), pollen = c(8, 1, 1)))
draws <- 4e6
drawn <- function(s) {
  gamete <- function() { seed <- runif(draws) < 0.5; n <- length(s$seed)
    parent <- ifelse(seed, sample(n, draws, TRUE, s$seed), sample(n, draws, TRUE, s$pollen)); parent * 2 + sample(0:1, draws, TRUE) }
  mean(gamete() == gamete())
}
loss <- data.frame(name = names(shares), alike = vapply(shares, drawn, 0))
loss$seed <- lapply(shares, function(s) s$seed); loss$pollen <- lapply(shares, function(s) s$pollen)
write_golden("diversity", list(keeping = keeping, needed = needed, staying = staying, loss = loss), 20111)
