source("tests/golden/write-table.R")
# Needs the package survival (3.5-3 here; Debian: r-cran-survival) and takes about two minutes.
library(survival)
# Counts of germinated seed by inspection: wheat, rice and mung bean at 10 to 40 degrees C (hours of day as days from
# sowing), and chickweed (hours). Ritz, Pipper & Streibig 2013, Eur. J. Agron. 45:1-6, as distributed with the R package
# drcData (GPL-2). Only the counts, which are facts, stand here. The last stretch, to Inf, counts what had not germinated.
open_data <- list(
  wheat_10C = list(from = c(0, 1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 0, 0, 0, 0, 4, 6, 8, 0, 0, 0, 0, 0, 0, 0, 0, 2)),
  mungbean_10C = list(from = c(0, 2, 3, 4, 5, 6, 7), to = c(2, 3, 4, 5, 6, 7, Inf),
    count = c(0, 4, 0, 0, 9, 7, 0)),
  wheat_16C = list(from = c(0, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 0, 11, 7, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1)),
  rice_16C = list(from = c(0, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 16, 17, 18), to = c(2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 16, 17, 18, Inf),
    count = c(0, 0, 0, 0, 0, 4, 4, 2, 0, 0, 0, 0, 0, 0, 10)),
  mungbean_16C = list(from = c(0, 1, 2, 3, 4, 5, 5), to = c(1, 2, 3, 4, 5, 6, Inf),
    count = c(0, 1, 7, 12, 0, 0, 0)),
  wheat_22C = list(from = c(0, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 1, 12, 3, 0, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1)),
  rice_22C = list(from = c(0, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 15, 16, 17, 18), to = c(2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 15, 16, 17, 18, Inf),
    count = c(0, 0, 5, 2, 0, 2, 0, 2, 0, 0, 0, 0, 0, 0, 0, 9)),
  wheat_28C = list(from = c(0, 1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 0, 0, 8, 0, 8, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1)),
  rice_28C = list(from = c(0, 2, 3, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(2, 3, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 0, 17, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 2)),
  wheat_34C = list(from = c(0, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 5, 11, 1, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1)),
  rice_34C = list(from = c(0, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(2, 3, 4, 5, 6, 8, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 1, 13, 1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 3)),
  wheat_40C = list(from = c(0, 1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 0, 0, 0, 0, 0, 0, 0, 1, 2, 0, 0, 0, 0, 0, 0, 17)),
  rice_40C = list(from = c(0, 1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18), to = c(1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 16, 17, 18, Inf),
    count = c(0, 0, 1, 6, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 12)),
  chickweed = list(from = c(0, 12, 22, 30, 36, 46, 54, 60, 71, 78, 84, 95, 103, 109, 120, 129, 133, 143, 151, 158.5, 169.5, 176.5, 182.5, 192.5, 200.5, 206.5, 216.5, 224.5, 230.5, 241.5, 249.5, 254.5, 266.5, 276.5, 281.5),
    to = c(12, 22, 30, 36, 46, 54, 60, 71, 78, 84, 95, 103, 109, 120, 129, 133, 143, 151, 158.5, 169.5, 176.5, 182.5, 192.5, 200.5, 206.5, 216.5, 224.5, 230.5, 241.5, 249.5, 254.5, 266.5, 276.5, 281.5, Inf),
    count = c(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 2, 0, 0, 0, 0, 3, 10, 11, 6, 5, 2, 0, 0, 0, 0, 0, 1, 0, 160))
)
one_dish <- function(d) data.frame(dish = 1, from = d$from, to = d$to, count = d$count)
dish <- function(number, seeds, to, count) {
  left <- seeds - sum(count)
  data.frame(dish = number, from = c(0, to), to = c(to, Inf), count = c(count, left))
}
cases <- lapply(open_data, one_dish)
cases$lost_dish <- rbind(one_dish(open_data$mungbean_10C), dish(2, 2, c(2, 3), c(0, 1)))
cases$two_lost_early <- rbind(one_dish(open_data$mungbean_10C), dish(2, 2, c(2, 3), c(0, 0)))
cases$dish_lost_half_way <- rbind(dish(1, 50, c(3, 5, 7, 10, 14), c(4, 20, 11, 6, 2)), dish(2, 50, c(3, 5, 7, 10, 14), c(6, 17, 14, 4, 1)),
  dish(3, 50, c(3, 5), c(5, 16)), dish(4, 50, c(3, 5, 7, 10, 14), c(2, 22, 9, 8, 3)))
cases$different_days <- rbind(dish(1, 50, c(2, 4, 6, 10), c(3, 20, 10, 4)), dish(2, 50, c(3, 5, 7), c(11, 20, 9)), dish(3, 25, c(4), c(9)))
cases$different_days_many <- rbind(dish(1, 100, c(2, 3, 4, 5, 7, 14), c(1, 10, 31, 22, 15, 6)), dish(2, 100, c(1, 4, 6, 9, 12), c(0, 38, 30, 12, 4)),
  dish(3, 100, c(2.5, 4.5, 8, 14), c(4, 45, 36, 1)), dish(4, 100, c(3, 6), c(14, 60)))
cases$one_seed <- dish(1, 1, c(2, 4), c(0, 1))
cases$one_seed_not <- dish(1, 1, c(2, 4), c(0, 0))
cases$none_germinated <- dish(1, 50, c(3, 7), c(0, 0))
cases$all_in_one_stretch <- dish(1, 50, c(3, 5, 7), c(0, 50, 0))
cases$all_in_the_first <- dish(1, 25, c(3, 5), c(25, 0))
cases$one_late <- dish(1, 400, c(3, 4, 5, 6, 7, 28), c(12, 180, 150, 20, 3, 1))
cases$still_rising <- dish(1, 100, c(2, 4, 6, 8, 10), c(2, 5, 9, 14, 18))
cases$all_but_one <- dish(1, 400, c(2, 3, 4, 5, 6), c(10, 150, 200, 30, 9))
cases$all_germinated <- dish(1, 100, c(2, 3, 4, 5, 6, 8), c(3, 21, 44, 22, 8, 2))
cases$large_counts <- dish(1, 1e6, c(2, 3, 4, 5, 6, 8, 12), c(1e4, 9e4, 31e4, 33e4, 12e4, 4e4, 1e3))

pooled <- function(d) { d <- d[d$count > 0, ]; aggregate(count ~ from + to, d, sum) }
seeds_of <- function(d) as.numeric(tapply(d$count, d$dish, sum))
case_rows <- do.call(rbind, lapply(names(cases), function(name) { d <- cases[[name]]
  data.frame(name = name, seeds = I(list(seeds_of(d))), dish = I(list(d$dish)), fromDay = I(list(d$from)), toDay = I(list(d$to)), germinated = I(list(d$count))) }))

# 1. Shared inspection days: Kaplan-Meier with the inspection as the day of the event; lost and left-over seed censored.
shared <- setdiff(names(cases), c("different_days", "different_days_many"))
km <- function(name) { p <- pooled(cases[[name]]); event <- is.finite(p$to)
  s <- summary(survfit(Surv(ifelse(event, p$to, p$from), event) ~ 1, weights = p$count), censored = TRUE)
  data.frame(name = name, day = s$time, germinated = 1 - s$surv, standardError = ifelse(s$surv > 0, s$std.err, 0)) }
kaplan_meier <- do.call(rbind, lapply(shared, km))

# 2. Any inspection days: survfit's own Turnbull estimate (stops early: about six digits), and EM run to rounding here,
# with the variance from the information projected on the shares that add to 1.
turnbull <- function(name) { p <- pooled(cases[[name]])
  s <- survfit(Surv(ifelse(p$from == 0, NA, p$from), ifelse(is.finite(p$to), p$to, NA), type = "interval2") ~ 1, weights = p$count)
  data.frame(name = name, day = s$time, germinated = 1 - s$surv) }
survfit_turnbull <- do.call(rbind, lapply(c("different_days", "different_days_many", "wheat_10C", "dish_lost_half_way"), turnbull))
em <- function(name) { p <- pooled(cases[[name]]); n <- sum(p$count)
  cuts <- sort(unique(c(p$from, p$to))); l <- head(cuts, -1); r <- cuts[-1]
  A <- outer(seq_along(p$from), seq_along(l), function(i, j) as.numeric(l[j] >= p$from[i] & r[j] <= p$to[i]))
  m <- rep(1 / length(l), length(l)); for (k in 1:400000) { new <- m * as.vector(t(A) %*% (p$count / as.vector(A %*% m))) / n; if (max(abs(new - m)) < 1e-17) break; m <- new }
  keep <- m > 1e-9; B <- A[, keep, drop = FALSE]; P <- as.vector(A %*% m); information <- t(B) %*% (B * (p$count / P^2))
  Z <- qr.Q(qr(cbind(1, diag(sum(keep)))))[, -1, drop = FALSE]; V <- Z %*% solve(t(Z) %*% information %*% Z) %*% t(Z)
  ends <- r[keep]; L <- lower.tri(V, diag = TRUE) * 1
  out <- data.frame(name = name, day = ends, germinated = cumsum(m[keep]), standardError = sqrt(pmax(0, diag(L %*% V %*% t(L)))))
  out[is.finite(out$day), ] }
em_curve <- do.call(rbind, lapply(c("different_days", "different_days_many", "dish_lost_half_way", "lost_dish"), em))

# 3. Figures of the germinated seed, and days by straight lines (approx) between running totals.
speed <- function(name, at) { p <- pooled(cases[[name]]); p <- p[is.finite(p$to), ]; t <- if (at == "inspection") p$to else (p$from + p$to) / 2; n <- p$count; G <- sum(n)
  x <- rep(t, n); by_day <- as.numeric(tapply(n, t, sum))
  data.frame(name = name, countedAt = at, germinated = G, meanDays = mean(x), varianceDays = var(x), seedsPerDay = sum(1 / x), synchrony = sum(choose(by_day, 2)) / choose(G, 2)) }
some <- Filter(function(name) sum(cases[[name]]$count[is.finite(cases[[name]]$to)]) > 0, names(cases))
speeds <- do.call(rbind, lapply(some, function(name) rbind(speed(name, "inspection"), speed(name, "middle"))))
line <- function(name, share, of) { p <- pooled(cases[[name]]); n <- sum(p$count); p <- p[is.finite(p$to), ]; p <- p[order(p$to), ]
  total <- cumsum(p$count); final <- tail(total, 1); goal <- share * if (of == "germinated") final else n
  if (goal > final) return(NULL)
  j <- which(total >= goal - 1e-9)[1]; before <- if (j > 1) total[j - 1] else 0
  data.frame(name = name, share = share, of = of, day = approx(c(before, total[j]), c(p$from[j], p$to[j]), xout = goal)$y) }
whole <- setdiff(intersect(some, shared), c("lost_dish", "two_lost_early", "dish_lost_half_way"))
lines <- do.call(rbind, unlist(lapply(whole, function(name) lapply(c(0.1, 0.25, 0.5, 0.75, 0.9), function(s) rbind(line(name, s, "germinated"), line(name, s, "set")))), recursive = FALSE))

# 4. Fitted curves: Newton's method in (b, e, d) with R's symbolic derivatives. Differences in whichever tail is small.
H <- list("log-logistic" = "1 / (1 + exp(-(%s)))", "log-normal" = "pnorm(%s)")
z <- function(t, sign = "") sprintf("%s(b * (log(%.17g) - log(e)))", sign, t)
term <- function(shape, from, to, middle) { h <- function(x) sprintf(H[[shape]], x)
  if (!is.finite(to)) sprintf("log(1 - d + d * %s)", h(z(from, "-")))
  else if (from == 0) sprintf("log(d * %s)", h(z(to)))
  else if (from > middle) sprintf("log(d * (%s - %s))", h(z(from, "-")), h(z(to, "-")))
  else sprintf("log(d * (%s - %s))", h(z(to)), h(z(from))) }
newton <- function(name, shape, hold_at_one) { p <- pooled(cases[[name]]); g <- is.finite(p$to)
  x <- rep(log((p$from + p$to) / 2)[g], pmin(p$count[g], 1e5)); middle <- exp(mean(x))
  free <- if (hold_at_one) c("b", "e") else c("b", "e", "d")
  parts <- lapply(seq_along(g), function(i) deriv3(parse(text = term(shape, p$from[i], p$to[i], middle))[[1]], free))
  at <- function(theta) { b <- theta[1]; e <- theta[2]; d <- if (hold_at_one) 1 else theta[3]
    v <- lapply(parts, eval, envir = list(b = b, e = e, d = d)); k <- length(free)
    list(value = sum(p$count * vapply(v, as.numeric, 0)), slope = Reduce(`+`, Map(function(v, n) n * as.numeric(attr(v, "gradient")), v, p$count)),
      curvature = Reduce(`+`, Map(function(v, n) n * matrix(attr(v, "hessian"), k, k), v, p$count))) }
  value <- function(theta) { if (theta[1] <= 0 || theta[2] <= 0 || (!hold_at_one && (theta[3] <= 0 || theta[3] >= 1))) return(1e10); v <- -suppressWarnings(at(theta)$value); if (is.finite(v)) v else 1e10 }
  share <- sum(p$count[g]) / sum(p$count)
  theta <- c(1.7 / max(sd(x), 0.05), middle, if (!hold_at_one) min(share, 0.999)); for (k in 1:6) theta <- optim(theta, value, control = list(maxit = 5000, reltol = 1e-14, parscale = abs(theta)))$par
  if (!hold_at_one && theta[3] > 0.9999) return(newton(name, shape, TRUE)) # runs up to a limit of 1
  for (k in 1:30) { a <- at(theta); step <- solve(a$curvature, a$slope); theta <- theta - step; if (max(abs(step / theta)) < 1e-15) break }
  a <- at(theta); V <- solve(-a$curvature)
  # Profile of the limit: best b and e by optim for each limit, root of the likelihood lost less 1.96^2 / 2.
  top <- if (hold_at_one) c(theta, 1) else theta
  lost <- function(d) { best <- top[1:2]; f <- function(q) { if (any(q <= 0)) return(1e10); v <- -profile_value(c(q, d)); if (is.finite(v)) v else 1e10 }
    for (k in 1:3) best <- optim(best, f, control = list(maxit = 5000, reltol = 1e-15, parscale = abs(best)))$par
    a$value + f(best) - qnorm(0.975)^2 / 2 }
  profile_value <- function(q) { middle_terms <- lapply(seq_along(g), function(i) parse(text = term(shape, p$from[i], p$to[i], middle))[[1]])
    sum(p$count * vapply(middle_terms, function(m) suppressWarnings(eval(m, list(b = q[1], e = q[2], d = q[3]))), 0)) }
  lower <- uniroot(lost, c(top[3] * 0.2, top[3]), tol = 1e-10)$root
  upper <- if (top[3] == 1 || lost(1) <= 0) 1 else uniroot(lost, c(top[3], 1), tol = 1e-10)$root
  data.frame(name = name, shape = shape, limit = top[3], limitLower = lower, limitUpper = upper, middleDay = theta[2], steepness = theta[1], seLimit = if (hold_at_one) NA else sqrt(V[3, 3]),
    seMiddleDay = sqrt(V[2, 2]), seSteepness = sqrt(V[1, 1]), logLikelihood = a$value) }
stretches <- function(name) { p <- pooled(cases[[name]]); sum(is.finite(p$to)) }
fitted <- Filter(function(name) stretches(name) >= 3, names(cases))
fits <- do.call(rbind, unlist(lapply(fitted, function(name) lapply(names(H), function(shape) {
  none_left <- all(is.finite(pooled(cases[[name]])$to)); newton(name, shape, none_left || name %in% c("lost_dish", "two_lost_early")) })), recursive = FALSE))

# 5. All germinated: survreg knows no limit and need not.
whole_fit <- function(name, shape) { p <- pooled(cases[[name]])
  m <- survreg(Surv(ifelse(p$from == 0, NA, p$from), p$to, type = "interval2") ~ 1, weights = p$count, dist = c("log-logistic" = "loglogistic", "log-normal" = "lognormal")[[shape]],
    control = survreg.control(rel.tolerance = 1e-14, maxiter = 200)); V <- vcov(m)
  data.frame(name = name, shape = shape, logMiddle = unname(coef(m)), logSpread = log(m$scale), v11 = V[1, 1], v12 = V[1, 2], v22 = V[2, 2]) }
survreg_fits <- do.call(rbind, unlist(lapply(c("mungbean_10C", "mungbean_16C", "all_germinated"), function(name) lapply(names(H), function(shape) whole_fit(name, shape))), recursive = FALSE))

write_golden("germination-time-course", list(cases = case_rows, kaplanMeier = kaplan_meier, survfitTurnbull = survfit_turnbull, expectationMaximisation = em_curve,
  speeds = speeds, straightLines = lines, fits = fits, survreg = survreg_fits))
