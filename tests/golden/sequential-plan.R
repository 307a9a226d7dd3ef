# Sequential tests by another way than the code's recursion of chances: the number of ways to each count that never meets a
# limit on the way is counted (products of choose()), and a way to s of n has the chance p^s (1-p)^(n-s), the same for all.
# Uneven dishes have no such short cut: there, chances are carried over whole matrices, with lbeta() for each dish.
source("tests/golden/write-table.R")
never <- NA
plans <- list(
  published = list(n = seq(40, 400, 40), regrow = c(29, 64, 100, 135, 170, 205, 240, 275, 310, 340), keep = c(never, 76, 111, 146, 181, 216, 251, 286, 321, 341)),
  ownFive = list(n = seq(40, 240, 40), regrow = c(31, 66, 100, 134, 168, 205), keep = c(37, 72, 106, 140, 174, 206)),
  ownThree = list(n = seq(40, 400, 40), regrow = c(27, 61, 95, 129, 164, 198, 232, 266, 300, 340), keep = c(never, 77, 111, 146, 180, 214, 248, 282, 316, 341)),
  ownHigh = list(n = seq(40, 240, 40), regrow = c(37, 76, 116, 155, 194, 233), keep = c(never, 80, 119, 158, 197, 234)),
  oneSeed = list(n = 1, regrow = 0, keep = 1),
  twoLooksOfOne = list(n = 1:2, regrow = c(never, 1), keep = c(never, 2)),
  unequalGroups = list(n = c(5, 25, 32), regrow = c(1, 18, 25), keep = c(never, 24, 28)),
  openEnd = list(n = c(10, 20), regrow = c(5, 14), keep = c(10, 19)))
p_grid <- c(0, 1e-6, 0.1, 0.5, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 0.99, 0.999999, 1)
times <- function(count, log_chance) ifelse(count == 0, 0, count * log_chance) # 0 seeds at chance 0: a factor of 1
low_of <- function(plan, k) if (is.na(plan$regrow[k])) 0 else plan$regrow[k] + 1
high_of <- function(plan, k) if (is.na(plan$keep[k])) plan$n[k] + 1 else plan$keep[k]
# ways[[k]][s + 1]: ways to s of n_k without an earlier stop; first[[k]]: the same, each times the share of the first group
count_ways <- function(plan) {
  ways <- list(); first <- list(); passing <- 1; passing_first <- NULL; tested <- 0
  for (k in seq_along(plan$n)) {
    n <- plan$n[k]; m <- n - tested; w <- numeric(n + 1); f <- numeric(n + 1)
    for (s in 0:n) for (x in max(0, s - m):min(tested, s)) {
      w[s + 1] <- w[s + 1] + passing[x + 1] * choose(m, s - x)
      f[s + 1] <- f[s + 1] + (if (k == 1) choose(m, s) * s / n else passing_first[x + 1] * choose(m, s - x))
    }
    ways[[k]] <- w; first[[k]] <- f
    on <- 0:n >= low_of(plan, k) & 0:n < high_of(plan, k)
    passing <- w * on; passing_first <- f * on; tested <- n
  }
  list(ways = ways, first = first)
}
summarise <- function(plan, chances, p) { # chances[[k]][s + 1]
  last <- length(plan$n); regrow <- keep <- on <- numeric(last); seeds <- 0; share <- 0
  for (k in 1:last) {
    s <- 0:plan$n[k]; low <- low_of(plan, k); high <- high_of(plan, k); c <- chances[[k]]
    regrow[k] <- sum(c[s < low]); keep[k] <- sum(c[s >= high]); on[k] <- sum(c[s >= low & s < high])
    stops <- if (k == last) rep(TRUE, length(s)) else s < low | s >= high
    seeds <- seeds + plan$n[k] * sum(c[stops]); share <- share + sum((c * s / plan$n[k])[stops])
  }
  list(regrow = regrow, keep = keep, on = on, seeds = seeds, bias = share - p)
}
row_of <- function(name, plan, p, found, dish = 1, rho = 0) data.frame(plan = name, germination = p, dishSize = dish, correlation = rho, regrow = I(list(found$regrow)), keep = I(list(found$keep)),
  goOn = I(list(found$on)), expectedSeeds = found$seeds, bias = found$bias)
out <- list(); estimates <- list()
for (name in names(plans)) {
  plan <- plans[[name]]; counted <- count_ways(plan)
  for (p in p_grid) {
    chances <- lapply(seq_along(plan$n), function(k) { s <- 0:plan$n[k]; exp(log(counted$ways[[k]]) + times(s, log(p)) + times(plan$n[k] - s, log1p(-p))) })
    out[[length(out) + 1]] <- row_of(name, plan, p, summarise(plan, chances, p))
  }
  for (k in seq_along(plan$n)) for (s in 0:plan$n[k]) {
    stops <- k == length(plan$n) || s < low_of(plan, k) || s >= high_of(plan, k)
    w <- counted$ways[[k]][s + 1]
    estimates[[length(estimates) + 1]] <- data.frame(plan = name, seedsTested = plan$n[k], germinated = s, stops = as.numeric(stops && w > 0), unbiased = if (stops && w > 0) counted$first[[k]][s + 1] / w else NA)
  }
}
dbetabinom <- function(k, n, p, rho) { a <- p * (1 - rho) / rho; b <- (1 - p) * (1 - rho) / rho; exp(lchoose(n, k) + lbeta(k + a, n - k + b) - lbeta(a, b)) }
uneven <- list()
for (name in c("published", "ownFive", "unequalGroups")) for (dish in c(10, 20, 40)) for (rho in c(0.01, 0.1)) for (p in c(0.5, 0.8, 0.85, 0.9, 0.99)) {
  plan <- plans[[name]]; state <- 1; tested <- 0; chances <- list()
  for (k in seq_along(plan$n)) {
    left <- plan$n[k] - tested
    while (left > 0) {
      d <- min(dish, left); step <- matrix(0, length(state), length(state) + d)
      for (x in seq_along(state)) step[x, x + 0:d] <- dbetabinom(0:d, d, p, rho)
      state <- as.vector(state %*% step); left <- left - d
    }
    tested <- plan$n[k]; chances[[k]] <- state
    state <- state * (0:tested >= low_of(plan, k) & 0:tested < high_of(plan, k))
  }
  uneven[[length(uneven) + 1]] <- row_of(name, plan, p, summarise(plan, chances, p), dish, rho)
}
plan_rows <- lapply(names(plans), function(name) { plan <- plans[[name]]; data.frame(plan = name, seedsTested = I(list(plan$n)), regrowAtMost = I(list(plan$regrow)), keepAtLeast = I(list(plan$keep))) })
write_golden("sequential-plan", list(plans = do.call(rbind, plan_rows), rows = do.call(rbind, out), uneven = do.call(rbind, uneven), estimates = do.call(rbind, estimates[sapply(estimates, function(e) e$plan %in% c("ownFive", "oneSeed", "twoLooksOfOne", "unequalGroups", "openEnd"))])))
