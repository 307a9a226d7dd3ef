# Fewest seeds of a single test, by looking at every size from 1 to 6000 with pbinom (uneven dishes: 1 to 40 dishes, lbeta).
source("tests/golden/write-table.R")
TIE <- 1 + 1e-10
most <- 6000
out <- list()
goals <- rbind(expand.grid(poor = c(0.5, 0.7, 0.8, 0.85), gap = c(0.05, 0.1), keep = c(0.05, 0.1, 0.01), regrow = c(0.05, 0.2)),
  data.frame(poor = c(0, 0, 0.85, 0.9, 0.5, 0.01, 0.96, 0.85), gap = c(1, 0.1, 0.15, 0.1, 0.5, 0.02, 0.03, 0.1), keep = c(0.05, 0.05, 0.05, 0.01, 1e-12, 0.05, 0.05, 1e-6), regrow = c(0.05, 0.05, 0.05, 0.05, 1e-12, 0.05, 0.05, 1e-12)))
for (i in seq_len(nrow(goals))) {
  g <- goals[i, ]; good <- min(1, g$poor + g$gap); n <- 1:most
  if (g$poor + g$gap == 1) good <- 1
  crit <- sapply(n, function(m) { c <- qbinom(g$keep, m, g$poor, lower.tail = FALSE) + 0:2 - 1; c <- c[c >= 0]; c[which(pbinom(c - 1, m, g$poor, lower.tail = FALSE) <= g$keep * TIE)[1]] })
  miss <- pbinom(crit - 1, n, good)
  does <- miss <= g$regrow * TIE
  small <- which(does)[1]; steady <- if (all(does)) 1 else max(which(!does)) + 1
  out[[i]] <- data.frame(poor = g$poor, good = good, falseKeepLimit = g$keep, falseRegrowLimit = g$regrow,
    smallest = small, smallestKeepAtLeast = crit[small], steady = steady, steadyKeepAtLeast = crit[steady],
    falseKeep = pbinom(crit[steady] - 1, steady, g$poor, lower.tail = FALSE), falseRegrow = miss[steady])
}
dbetabinom <- function(k, n, p, rho) { a <- p * (1 - rho) / rho; b <- (1 - p) * (1 - rho) / rho; exp(lchoose(n, k) + lbeta(k + a, n - k + b) - lbeta(a, b)) }
uneven <- list()
for (d in c(4, 10, 25, 50)) for (rho in c(0.005, 0.02, 0.1)) for (poor in c(0.75, 0.8)) {
  good <- poor + 0.15; at_poor <- at_good <- 1; crit <- fk <- fr <- numeric(40)
  for (m in 1:40) {
    n <- m * d
    conv <- function(state, p) { s <- numeric(length(state) + d); for (x in seq_along(state)) s[x + 0:d] <- s[x + 0:d] + state[x] * dbetabinom(0:d, d, p, rho); s }
    at_poor <- conv(at_poor, poor); at_good <- conv(at_good, good)
    above <- c(rev(cumsum(rev(at_poor))), 0) # above[c + 1] = P(at least c)
    crit[m] <- which(above <= 0.05 * TIE)[1] - 1; fk[m] <- above[crit[m] + 1]; fr[m] <- sum(at_good[seq_len(crit[m])])
  }
  does <- fr <= 0.1 * TIE
  found <- any(does) && does[40]
  small <- which(does)[1]; steady <- if (all(does)) 1 else max(which(!does)) + 1
  uneven[[length(uneven) + 1]] <- data.frame(dishSize = d, correlation = rho, poor = poor, good = good, seedsAvailable = 40 * d, found = as.numeric(found),
    smallest = small * d, steady = if (found) steady * d else NA, keepAtLeast = if (found) crit[steady] else crit[40], falseKeep = if (found) fk[steady] else fk[40], falseRegrow = if (found) fr[steady] else fr[40])
}
write_golden("seeds-to-tell", list(rows = do.call(rbind, out), uneven = do.call(rbind, uneven)))
