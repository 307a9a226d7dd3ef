# Golden values of the seed viability equation: sigma in days, 17 digits.
# DERIVED: arithmetic from the constants, not published worked examples. Run from the repository root:
#   Rscript tests/golden/viability-equation.R
constants <- list(
  barley = c(9.983, 5.896, .040, .000428), onion = c(6.975, 3.470, .040, .000428),
  soybean = c(7.748, 3.979, .053, .000228), cowpea = c(8.690, 4.715, .026, .000498),
  chickpea = c(9.070, 4.820, .045, .000324), lettuce = c(8.218, 4.797, .0489, .000365),
  cotton = c(9.240, 5.190, .03965, .000426), maize = c(9.993, 5.993, .0322, .000454),
  sorghum = c(9.381, 5.379, .0322, .000454), `pearl millet` = c(9.336, 5.540, .0322, .000454),
  `sugar beet` = c(8.988, 4.969, .0322, .000454), `African rice` = c(8.786, 4.727, .0322, .000454),
  wheat = c(8.498, 4.836, .0322, .000454), `foxtail millet` = c(8.478, 4.829, .0322, .000454),
  sugarcane = c(8.454, 4.964, .0322, .000454), `finger millet` = c(8.288, 4.345, .0322, .000454),
  `kodo millet` = c(8.138, 4.435, .0322, .000454), rice = c(8.096, 4.246, .0322, .000454),
  potato = c(8.037, 5.152, .0322, .000454))
rows <- c()
for (crop in names(constants)) for (moisture in c(2.5, 5, 8, 10, 12, 15)) for (temperature in c(-20, -18, 0, 5, 20.3, 35)) {
  k <- constants[[crop]]
  sigma <- 10^(k[1] - k[2] * log10(moisture) - k[3] * temperature - k[4] * temperature^2)
  rows <- c(rows, sprintf('{"crop":"%s","KE":%.17g,"CW":%.17g,"CH":%.17g,"CQ":%.17g,"moisturePercent":%.17g,"temperatureC":%.17g,"sigmaDays":%.17g}',
    crop, k[1], k[2], k[3], k[4], moisture, temperature, sigma))
}
writeLines(c('{', sprintf('"madeBy":"%s, tests/golden/viability-equation.R",', R.version.string), '"seed":null,', '"rows":[',
  paste(rows, collapse = ",\n"), ']}'), 'tests/golden/viability-equation.json')
