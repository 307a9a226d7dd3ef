# What a fridge that failed cost sealed and open seed: 1/sigma over a given course of temperature and humidity, by R's
# integrate, less the same at the target. DERIVED: arithmetic from the constants, not a published worked example.
# Run from the repository root: Rscript tests/golden/climate-cost.R
source("tests/golden/write-table.R")
constants <- list(barley = c(9.983, 5.896, .040, .000428), onion = c(6.975, 3.470, .040, .000428), soybean = c(7.748, 3.979, .053, .000228),
  maize = c(9.993, 5.993, .0322, .000454))
oil <- c(barley = .02, onion = .23, soybean = .2, maize = .05)
moistureAt <- function(h, t, o) { dry <- (1 - o) * sqrt(-440 * log1p(-h)) / (1.1 + t / 90); 100 * dry / (100 + dry) }
low <- sapply(oil, function(o) moistureAt(.106, 20, o))
targetC <- 4; targetHumidity <- .42
# Day 0 to 120: a daily swing, a slow wave, and from day 40 on a failure that comes and goes smoothly.
temperature <- function(d) 4 + .8 * sin(2 * pi * d) + .5 * sin(2 * pi * d / 30) + 19 * exp(-((d - 45) / 6)^2)
humidity <- function(d) .42 + .03 * sin(2 * pi * d / 7) + .3 * exp(-((d - 46) / 7)^2)
rate <- function(k, m, t) 10^-(k[1] - k[2] * log10(m) - k[3] * t - k[4] * t^2)
total <- function(f, from, to) sum(sapply(seq(from, to - 1), function(d) integrate(f, d, d + 1, rel.tol = 1e-13, subdivisions = 1000)$value))

sealed <- expand.grid(crop = names(constants), moisture = c(3, 6, 9.3), from = c(0, 30, 40), length = c(7, 30, 80), stringsAsFactors = FALSE)
open <- expand.grid(crop = names(constants), from = c(0, 30, 40), length = c(7, 30, 80), stringsAsFactors = FALSE)
sealed$probits <- mapply(function(n, m, a, l) total(function(d) rate(constants[[n]], max(m, low[[n]]), temperature(d)), a, a + l),
  sealed$crop, sealed$moisture, sealed$from, sealed$length)
sealed$normal <- mapply(function(n, m, l) l * rate(constants[[n]], max(m, low[[n]]), targetC), sealed$crop, sealed$moisture, sealed$length)
open$probits <- mapply(function(n, a, l) total(function(d) rate(constants[[n]],
  pmax(moistureAt(humidity(d), temperature(d), oil[[n]]), low[[n]]), temperature(d)), a, a + l), open$crop, open$from, open$length)
open$normal <- mapply(function(n, l) l * rate(constants[[n]], max(moistureAt(targetHumidity, targetC, oil[[n]]), low[[n]]), targetC),
  open$crop, open$length)
seeds <- data.frame(crop = names(constants), KE = sapply(constants, `[`, 1), CW = sapply(constants, `[`, 2), CH = sapply(constants, `[`, 3),
  CQ = sapply(constants, `[`, 4), oil = unname(oil))
# The course itself at some instants, so that the test's own copy of it is compared too.
days <- c(0, .3, 17.25, 40, 45.5, 46, 60.75, 119.9)
course <- data.frame(day = days, temperature = temperature(days), humidity = humidity(days))
write_golden("climate-cost", list(seeds = seeds, course = course, sealed = sealed, open = open))
