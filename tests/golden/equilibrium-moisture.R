# Writes equilibrium-moisture.json: Cromarty's form evaluated by R on a grid.
# Run from the repository root: Rscript tests/golden/equilibrium-moisture.R
num <- function(x) trimws(formatC(x, digits = 17, format = "g"))
grid <- expand.grid(relativeHumidity = c(1e-6, 0.01, 0.1, 0.15, 0.3, 0.5, 0.7, 0.9, 0.95),
                    temperatureC = c(-20, 0, 5, 15, 25, 40), oilFraction = c(0, 0.02, 0.2, 0.45))
dry <- with(grid, (1 - oilFraction) * sqrt(-440 * log1p(-relativeHumidity)) / (1.1 + temperatureC / 90))
fresh <- 100 * dry / (100 + dry)
rows <- sprintf('    {"relativeHumidity": %s, "temperatureC": %s, "oilFraction": %s, "moisturePercent": %s}',
                num(grid$relativeHumidity), num(grid$temperatureC), num(grid$oilFraction), num(fresh))
writeLines(c("{", sprintf('  "tool": "%s",', R.version.string), '  "seed": null,',
             '  "source": "Cromarty, Ellis & Roberts 1982, from memory",', '  "rows": [',
             paste(rows, collapse = ",\n"), "  ]", "}"), "tests/golden/equilibrium-moisture.json")
