# Writes moisture-of-stays.json: the weighted mean of several moisture tests, how far two may be apart, the moisture to
# dry to, and how long sealed seed keeps before and after drying. Run from the repository root:
# Rscript tests/golden/moisture-of-stays.R
source("tests/golden/write-table.R")
set.seed(20)
means <- do.call(rbind, lapply(1:12, function(case) {
  n <- sample(1:5, 1)
  m <- round(runif(n, 3, 14), 2); s <- sample(c(0.2, 0.35, 0.5, 1), n, replace = TRUE)
  data.frame(case = case, moisturePercent = m, standardPoints = s, mean = weighted.mean(m, 1 / s^2))
}))
apart <- expand.grid(firstPoints = c(0.2, 0.5, 1), secondPoints = c(0.2, 0.35, 0.5, 1))
apart$permitted <- 2 * sqrt(apart$firstPoints^2 + apart$secondPoints^2)

# Cromarty's form (from memory), percent of fresh weight
fresh <- function(R, T, Do) { d <- (1 - Do) * sqrt(-440 * log1p(-R)) / (1.1 + T / 90); 100 * d / (100 + d) }
targets <- data.frame(oilFraction = c(0, 0.02, 0.05, 0.2, 0.36, 0.45))
targets$atRest <- fresh(0.15, 15, targets$oilFraction)
targets$lowest <- fresh(0.106, 20, targets$oilFraction)

# The viability equation; onion as published, no limits reached
sigma <- function(KE, CW, CH, CQ, m, t) 10^(KE - CW * log10(m) - CH * t - CQ * t^2)
sealed <- expand.grid(moisturePercent = c(7, 8, 9, 9.5, 11, 14), temperatureC = c(-18, 4, 20, 30))
probits <- qnorm(0.96) - qnorm(0.96 * 0.85)
sealed$days <- sigma(6.975, 3.470, 0.040, 0.000428, sealed$moisturePercent, sealed$temperatureC) * probits
write_golden("moisture-of-stays", list(means = means, apart = apart, targets = targets, sealed = sealed))
