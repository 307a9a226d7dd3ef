source("tests/golden/write-table.R")
# Storage experiments simulated under the equation, and fitted in three steps that share nothing with ours but the model:
# optim on the log-likelihood; then glm on the model linearised at the last answer (its Jacobian as the design, the rest
# as an offset), again and again until nothing moves, so that glm's own coefficients and unscaled covariance are those of
# the full model; then scoring with both tails in logarithms, because glm holds 1 - P as one minus a rounded P. The script
# stops where the last two disagree by more than glm's rounding allows.
RNG_SEED <- 20261125
set.seed(RNG_SEED, kind = "Mersenne-Twister", normal.kind = "Inversion", sample.kind = "Rejection")
HELD <- c(0.0329, 0.000478)
sigma_of <- function(k, m, t) 10^(k[1] - k[2] * log10(m) - k[3] * t - k[4] * t^2)

# Times at which about the wanted probits are lost, in whole days.
design <- function(lots, moistures, temperatures, losses, k, n) {
  grid <- expand.grid(loss = losses, m = moistures, t = temperatures, lot = seq_along(lots))
  days <- pmax(1, round(grid$loss * sigma_of(k, grid$m, grid$t))); days[grid$loss == 0] <- 0
  data.frame(lot = grid$lot, m = grid$m, t = grid$t, days = days, n = n)
}
draw <- function(d, K, k, spread = 0) {
  eta <- K[d$lot] - ifelse(d$days == 0, 0, d$days / sigma_of(k, ifelse(is.na(d$m), 1, d$m), ifelse(is.na(d$t), 1, d$t)))
  d$g <- rbinom(nrow(d), d$n, pnorm(eta + spread * rnorm(nrow(d)))); d
}
parts <- function(theta, d, fitted, held) {
  L <- max(d$lot); k <- c(theta[L + 1:2], if (fitted) theta[L + 3:4] else held)
  m <- ifelse(is.na(d$m), 1, d$m); t <- ifelse(is.na(d$t), 1, d$t)
  lost <- ifelse(d$days == 0, 0, d$days / sigma_of(k, m, t))
  D <- cbind(1, -log10(m), -t, -t^2)[, seq_len(if (fitted) 4 else 2), drop = FALSE]
  J <- cbind(outer(d$lot, seq_len(L), "==") * 1, lost * log(10) * D)
  list(eta = theta[d$lot] - lost, J = J)
}
loglik <- function(theta, d, fitted, held) {
  eta <- parts(theta, d, fitted, held)$eta
  sum(ifelse(d$g > 0, d$g * pnorm(eta, log.p = TRUE), 0) + ifelse(d$g < d$n, (d$n - d$g) * pnorm(eta, lower.tail = FALSE, log.p = TRUE), 0))
}
ratio <- function(eta, lower) exp(dnorm(eta, log = TRUE) - pnorm(eta, lower.tail = lower, log.p = TRUE))
fit <- function(d, start, fitted, held, by_glm = TRUE) {
  scale <- c(rep(1, max(d$lot)), c(1, 1, 0.01, 0.0001)[seq_len(if (fitted) 4 else 2)])
  target <- function(theta) { v <- -loglik(theta, d, fitted, held); if (is.finite(v)) v else 1e10 }
  theta <- optim(start, target, method = "Nelder-Mead", control = list(maxit = 5000, parscale = scale))$par
  theta <- optim(theta, target, method = "BFGS", control = list(maxit = 500, reltol = 1e-14, parscale = scale))$par
  if (by_glm) {
    for (i in 1:200) {
      p <- parts(theta, d, fitted, held)
      m <- suppressWarnings(glm(cbind(g, n - g) ~ 0 + p$J, data = d, offset = p$eta - drop(p$J %*% theta), family = binomial(probit),
        start = theta, control = glm.control(epsilon = 1e-15, maxit = 500)))
      move <- max(abs(coef(m) - theta) / scale); theta <- unname(coef(m)); if (move < 1e-12) break
    }
    from_glm <- list(theta = theta, v = unname(summary(m)$cov.unscaled))
  }
  for (i in 1:300) {
    p <- parts(theta, d, fitted, held); s <- ratio(p$eta, TRUE); f <- ratio(p$eta, FALSE)
    u <- d$g * s - (d$n - d$g) * f; w <- d$n * s * f
    step <- solve(t(p$J) %*% (w * p$J), drop(t(p$J) %*% u), tol = 1e-30)
    # Halved while the likelihood falls; near the top full steps.
    h <- 1; while (sum(step * drop(t(p$J) %*% u)) > 1e-8 && loglik(theta + h * step, d, fitted, held) < loglik(theta, d, fitted, held)) h <- h / 2
    theta <- theta + h * step; if (max(abs(step) / scale) < 1e-13) break
  }
  p <- parts(theta, d, fitted, held); s <- ratio(p$eta, TRUE); f <- ratio(p$eta, FALSE); w <- d$n * s * f
  v <- solve(t(p$J) %*% (w * p$J), tol = 1e-30)
  if (by_glm) stopifnot(max(abs(from_glm$theta - theta) / scale) < 1e-6, max(abs(from_glm$v / v - 1)) < 1e-5)
  logP <- pnorm(p$eta, log.p = TRUE); logQ <- pnorm(p$eta, lower.tail = FALSE, log.p = TRUE); dead <- d$n - d$g
  dev <- 2 * sum(ifelse(d$g > 0, d$g * (log(d$g / d$n) - logP), 0) + ifelse(dead > 0, dead * (log(dead / d$n) - logQ), 0))
  chi <- sum((d$g * exp(logQ) - dead * exp(logP))^2 / (d$n * exp(logP + logQ)))
  list(theta = theta, v = v, deviance = dev, chi = chi, df = nrow(d) - length(theta))
}

wheat <- c(8.498, 4.836, 0.0322, 0.000454) # Ellis & Hong 2007, abstract
onion <- c(6.975, 3.470, HELD)             # KE and CW recalled (Ellis & Roberts 1981)
rice <- c(8.096, 4.246, 0.0322, 0.000454)  # Ellis & Hong 2007, abstract
lettuce <- c(8.218, 4.797, 0.0489, 0.000365) # recalled (Kraak & Vos 1987)
six <- c(0, 0.6, 1.2, 1.8, 2.4, 3.2)
cases <- list(); add <- function(name, d, K, k, fitted, held = HELD, spread = 0, by_glm = TRUE) {
  d <- draw(d, K, k, spread); cases[[name]] <<- list(d = d, fitted = fitted, held = held, by_glm = by_glm, start = c(K, k[seq_len(if (fitted) 4 else 2)]), truth = k)
}
add("one_lot_held", design(1, c(5, 8, 12), c(20, 35, 45), six, onion, 50), 1.8, onion, FALSE)
add("one_lot_fitted", design(1, c(5, 8, 12), c(20, 35, 45), six, onion, 50), 1.8, onion, TRUE)
add("wheat_three_lots_held", design(1:3, c(6, 9, 13, 17), c(25, 40, 50), six, wheat, 100), c(2.2, 1.4, 0.9), wheat, FALSE, held = wheat[3:4])
add("wheat_three_lots_fitted", design(1:3, c(6, 9, 13, 17), c(0, 25, 40, 50), six, wheat, 100), c(2.2, 1.4, 0.9), wheat, TRUE)
add("rice_two_lots_fitted", design(1:2, c(4, 7, 11, 15), c(0, 20, 35, 50), six, rice, 100), c(2, 1.5), rice, TRUE)
add("held_at_other_than_true", design(1, c(5, 8, 12), c(20, 35, 45), six, lettuce, 50), 1.6, lettuce, FALSE)
add("uneven_dishes", design(1:2, c(5, 8, 12), c(20, 40), rep(six, each = 2), onion, 50), c(1.8, 1.2), onion, FALSE, spread = 0.4)
few <- data.frame(lot = 1, m = c(5, 5, 12, 12), t = 40, days = c(60, 200, 5, 20), n = 25)
add("four_counts_three_unknowns", few, 1.6, onion, FALSE)
# Met exactly, so the counts are written down: a draw may as well rise, and then nothing is most likely.
cases[["as_many_counts_as_unknowns"]] <- list(d = transform(few[c(1, 2, 4), ], g = c(23, 18, 14)), fitted = FALSE, held = HELD, by_glm = TRUE, start = c(1.6, onion[1:2]), truth = onion)
add("one_temperature_held", design(1, c(4, 7, 10, 14), 40, six, onion, 50), 1.8, onion, FALSE)
shared <- rbind(data.frame(lot = 1:2, m = NA, t = NA, days = 0, n = 400), design(1:2, c(5, 8, 12), c(30, 45), c(0.8, 1.6, 2.4), onion, 50))
add("controls_shared", shared, c(1.9, 1.3), onion, FALSE)
measured <- design(1:2, c(5, 8, 12), c(20, 40), six, onion, 100); measured$m <- round(measured$m * exp(0.03 * rnorm(nrow(measured))), 2)
add("moisture_measured_each_time", measured, c(1.8, 1.2), onion, FALSE)
add("hundred_thousand_seeds", design(1, c(5, 8, 12), c(20, 40), six, onion, 100000), 2.5, onion, FALSE)
add("barely_declined", design(1, c(4, 6, 8), c(10, 20, 30), c(0, 0.1, 0.2, 0.3), onion, 200), 1.2, onion, FALSE)
add("below_zero_degrees", design(1, c(5, 8, 12), c(-10, 20, 45), six, onion, 100), 1.8, onion, TRUE)
sharp <- data.frame(lot = 1, m = rep(c(5, 12), each = 4), t = 40, days = c(10, 100, 500, 900, 1, 5, 30, 60), n = 400)
cases[["near_separation"]] <- list(d = transform(sharp, g = c(400, 399, 1, 0, 400, 398, 1, 0)), fitted = FALSE, held = HELD, by_glm = FALSE, start = c(4, onion[1:2]), truth = onion)

fits <- do.call(rbind, lapply(names(cases), function(name) {
  c <- cases[[name]]; d <- c$d; r <- fit(d, c$start, c$fitted, c$held, c$by_glm)
  data.frame(name = name, temperatureCoefficients = if (c$fitted) "fitted" else "fixed", held = I(list(c$held)), truth = I(list(c$truth)),
    lot = I(list(d$lot)), moisture = I(list(d$m)), temperature = I(list(d$t)), days = I(list(d$days)), sown = I(list(d$n)), germinated = I(list(d$g)),
    estimates = I(list(r$theta)), covariance = I(list(as.vector(r$v))), deviance = r$deviance, pearsonChiSquare = r$chi, degreesOfFreedom = r$df,
    chance = if (r$df > 0) pchisq(r$chi, r$df, lower.tail = FALSE) else NA)
}))
write_golden("storage-experiment", list(fits = fits), RNG_SEED)
