# Writes oven-uncertainty.json: slopes of the oven formula by R's symbolic deriv(), and the standard deviation of a
# million simulated, rounded weighings. Run from the repository root: Rscript tests/golden/oven-uncertainty.R
source("tests/golden/write-table.R")
set.seed(20260312)
slope <- deriv(~ 100 * (M2 - M3) / (M2 - M1), c("M1", "M2", "M3"))
cases <- data.frame(dish = c(0, 20, 12.345, 25, 18, 20), fresh = c(5, 5, 4.5678, 10, 0.4, 5),
                    lost = c(0.08, 0.08, 0.3, 0.05, 0.12, 0), stepG = c(0.001, 0.001, 0.0001, 0.01, 0.01, 0.001))
out <- do.call(rbind, lapply(seq_len(nrow(cases)), function(i) with(cases[i, ], {
  M1 <- dish; M2 <- dish + fresh; M3 <- dish + fresh * (1 - lost)
  g <- attr(eval(slope), "gradient")
  u <- function() runif(1e6, -stepG / 2, stepG / 2)
  a <- M1 + u(); b <- M2 + u(); c <- M3 + u()
  data.frame(dish = M1, dishAndFresh = M2, dishAndDry = M3, stepG = stepG, standardPoints = stepG / sqrt(12) * sqrt(sum(g^2)),
             largestPoints = stepG / 2 * sum(abs(g)), simulatedPoints = sd(100 * (b - c) / (b - a)))
})))
two <- deriv(~ S1 + S2 - S1 * S2 / 100, c("S1", "S2"))
stages <- expand.grid(first = c(0, 12, 30), second = c(0, 8, 15), firstPoints = c(0.01, 0.1), secondPoints = c(0, 0.05))
stages$standardPoints <- with(stages, mapply(function(S1, S2, u1, u2) { g <- attr(eval(two), "gradient"); sqrt(sum((g * c(u1, u2))^2)) },
                                             first, second, firstPoints, secondPoints))
write_golden("oven-uncertainty", list(oven = out, stages = stages), "20260312")
