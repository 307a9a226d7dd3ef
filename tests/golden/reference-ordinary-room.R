# Years to lose one probit, open at 20 C and 50 % relative humidity, for every fitted row of the table copy over a
# grid of oil contents. Equations written out here, apart from the product's code.
# Run from the project's folder: Rscript tests/golden/reference-ordinary-room.R
rows <- read.delim("lib/domain/reference/published/viability-constants.tsv", quote = "", check.names = FALSE)
rows <- rows[!is.na(rows$KE), ]
temperature <- 20
humidity <- 0.5
out <- character()
for (oil in c(0, 0.02, 0.05, 0.1, 0.2, 0.36, 0.48)) {
  dry <- (1 - oil) * sqrt(-440 * log(1 - humidity)) / (1.1 + temperature / 90)
  fresh <- 100 * dry / (100 + dry)
  for (i in seq_len(nrow(rows))) {
    sigma <- 10^(rows$KE[i] - rows$CW[i] * log10(fresh) - rows$CH[i] * temperature - rows$CQ[i] * temperature^2)
    out <- c(out, sprintf('    {"crop":"%s","oilFraction":%s,"moisturePercent":%.17g,"yearsPerProbit":%.17g}',
                          rows$crop[i], format(oil), fresh, sigma / 365.25))
  }
}
writeLines(c("{", sprintf('  "tool": "%s", "seed": null,', R.version.string), '  "rows": [',
             paste(out, collapse = ",\n"), "  ]", "}"), "tests/golden/reference-ordinary-room.json")
