# Writes seeds-to-sow.json: fewest n with P(Bin(n, p) >= plants) >= assurance, from R's negative binomial quantile
# (failures before the last plant), each checked on both sides with pbinom.
# Run from the repository root: Rscript tests/golden/seeds-to-sow.R
num <- function(x) trimws(formatC(x, digits = 17, format = "g"))
grid <- expand.grid(plants = c(1, 2, 5, 10, 20, 37, 100, 250, 1000, 5000),
                    chancePerSeed = c(1e-4, 0.001, 0.01, 0.05, 0.2, 0.37, 0.5, 0.68, 0.85, 0.95, 0.999, 1),
                    assurance = c(0.05, 0.5, 0.8, 0.95, 0.99, 0.9999))
enough <- function(n, k, p) pbinom(k - 1, n, p, lower.tail = FALSE)
seeds <- with(grid, plants + qnbinom(assurance, plants, chancePerSeed))
# A chance within 1e-12 of the assurance is a tie (such as 3/4 exactly), which rounding must not decide: it is enough.
tie <- 1e-12
reached <- enough(seeds, grid$plants, grid$chancePerSeed)
oneLess <- enough(seeds - 1, grid$plants, grid$chancePerSeed)
stopifnot(all(reached >= grid$assurance - tie), all(seeds == grid$plants | oneLess < grid$assurance - tie))
rows <- sprintf('    {"plants": %d, "chancePerSeed": %s, "assurance": %s, "seeds": %s, "chance": %s}', grid$plants,
                num(grid$chancePerSeed), num(grid$assurance), format(seeds, scientific = FALSE, trim = TRUE),
                num(enough(seeds, grid$plants, grid$chancePerSeed)))
writeLines(c("{", sprintf('  "tool": "%s",', R.version.string), '  "seed": null,', '  "rows": [',
             paste(rows, collapse = ",\n"), "  ]", "}"), "tests/golden/seeds-to-sow.json")
