# Storage life, viability after, years gained, histories and the delta method, from R's qnorm, pnorm and uniroot.
# DERIVED: arithmetic from the constants with the equation's limits (moisture held at the low limit, nothing above 15 %), not
# published worked examples. Run from the repository root: Rscript tests/golden/storage-life.R
source("tests/golden/write-table.R")
constants <- list(
  barley = c(9.983, 5.896, .040, .000428), onion = c(6.975, 3.470, .040, .000428), soybean = c(7.748, 3.979, .053, .000228),
  cotton = c(9.240, 5.190, .03965, .000426), maize = c(9.993, 5.993, .0322, .000454), potato = c(8.037, 5.152, .0322, .000454))
errors <- list(maize = c(.456, .392), potato = c(.397, .347), sugarcane = c(.545, .518), wheat = c(.431, .366))
# Low limits: given for some, otherwise the equilibrium at 10.6 % humidity and 20 C (Cromarty's form, from memory).
limits <- c(barley = NA, onion = NA, soybean = 3.9, cotton = 3.6, maize = NA, potato = 4.5)
oil <- c(barley = .02, onion = .23, soybean = .2, cotton = .21, maize = .05, potato = .2)
equilibrium <- function(o) { dry <- sqrt(-440 * log1p(-.106)) / ((1.1 + 20 / 90) / (1 - o)); 100 * dry / (100 + dry) }
low <- sapply(names(constants), function(n) if (is.na(limits[[n]])) equilibrium(oil[[n]]) else limits[[n]])
sigma <- function(n, m, t) { k <- constants[[n]]; 10^(k[1] - k[2] * log10(pmax(m, low[[n]])) - k[3] * t - k[4] * t^2) }
year <- 365.25

life <- expand.grid(crop = names(constants), moisture = c(2.5, 4, 6, 9.3, 14, 15), temperature = c(-20, -18, 0, 5, 20.3, 35),
  fall = 1:4, stringsAsFactors = FALSE)
falls <- rbind(c(.95, .85), c(.999999, .01), c(.5, .5), c(.98, .9799))
life$initial <- falls[life$fall, 1]; life$wanted <- falls[life$fall, 2]; life$fall <- NULL
life$sigma <- mapply(sigma, life$crop, life$moisture, life$temperature)
life$days <- life$sigma * (qnorm(life$initial) - qnorm(life$wanted))
for (y in c(1, 10, 100)) life[[paste0("after", y)]] <- pnorm(qnorm(life$initial) - y * year / life$sigma)

# One percent drier, five degrees cooler: difference and ratio.
gain <- expand.grid(crop = names(constants), moisture = c(4, 6, 9.3, 14), temperature = c(-18, 5, 25), stringsAsFactors = FALSE)
lost <- qnorm(.95) - qnorm(.85)
gain$days <- mapply(sigma, gain$crop, gain$moisture, gain$temperature) * lost
gain$drierGain <- mapply(sigma, gain$crop, gain$moisture - 1, gain$temperature) * lost - gain$days
gain$coolerTimes <- mapply(sigma, gain$crop, gain$moisture, gain$temperature - 5) * lost / gain$days

# Histories of three stretches: a shed, a room, a freezer that goes on. Time to the level by uniroot on the viability itself.
history <- expand.grid(crop = names(constants), shed = c(0, 30, 200), room = c(1, 400, 4000), wanted = c(.949, .85, .5, .02),
  stringsAsFactors = FALSE)
stretch <- function(n) c(1 / sigma(n, 12.5, 28), 1 / sigma(n, 8, 18), 1 / sigma(n, 5, -18))
lossAt <- function(n, shed, room, day) {
  rate <- stretch(n); day1 <- pmin(day, shed); day2 <- pmin(pmax(day - shed, 0), room); day3 <- pmax(day - shed - room, 0)
  rate[1] * day1 + rate[2] * day2 + rate[3] * day3
}
history$afterAll <- mapply(function(n, s, r) pnorm(qnorm(.95) - lossAt(n, s, r, s + r + 3650)), history$crop, history$shed, history$room)
# In log days, so that the root has as many digits at an hour as at a million years.
history$days <- mapply(function(n, s, r, w) exp(uniroot(function(x) qnorm(.95) - lossAt(n, s, r, exp(x)) - qnorm(w), c(-25, 25), tol = 1e-15,
  maxiter = 10000)$root), history$crop, history$shed, history$room, history$wanted)

# Delta method: gradient of log10 sigma is (1, -log10 m); covariance with correlation 1 and 0.
delta <- expand.grid(crop = names(errors), moisture = c(1, 2, 5, 8, 15, 99), stringsAsFactors = FALSE)
spread <- function(n, m, r) { s <- errors[[n]]; v <- matrix(c(s[1]^2, r * s[1] * s[2], r * s[1] * s[2], s[2]^2), 2); g <- c(1, -log10(m)); sqrt(max(0, t(g) %*% v %*% g)) }
delta$errorKE <- sapply(errors[delta$crop], `[`, 1); delta$errorCW <- sapply(errors[delta$crop], `[`, 2)
delta$least <- mapply(spread, delta$crop, delta$moisture, 1); delta$cautious <- mapply(spread, delta$crop, delta$moisture, 0)
delta$cautiousFactor <- 10^(qnorm(.975) * delta$cautious)

seeds <- data.frame(crop = names(constants), KE = sapply(constants, `[`, 1), CW = sapply(constants, `[`, 2), CH = sapply(constants, `[`, 3),
  CQ = sapply(constants, `[`, 4), limit = unname(limits[names(constants)]), oil = unname(oil[names(constants)]), low = unname(low))
write_golden("storage-life", list(seeds = seeds, life = life, gain = gain, history = history, delta = delta))
