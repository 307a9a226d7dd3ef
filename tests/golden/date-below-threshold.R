# Golden quantiles of the ageing D at which a lot falls below a threshold: D solves K - exp(b) D = z, so D = (K - z) exp(-b), and its
# distribution is read straight from the posterior on a dense grid of (K, b), each point a lot. No chance is ever inverted, so this is
# another road than the program's. Run from the repository root: Rscript tests/golden/date-below-threshold.R
source("tests/golden/write-table.R")
test <- function(...) matrix(c(...), ncol = 3, byrow = TRUE) # probits lost, germinated, sown
none <- matrix(numeric(0), ncol = 3)
own <- c(1.75, .75, 0, .5); doubtful <- c(1.75, .75, .3, .9)
cases <- list(list("no tests", none, own), list("no tests, doubtful", none, doubtful), list("one test", test(.3, 92, 100), own),
  list("two tests", test(0, 96, 100, .5, 85, 100), own), list("all grew", test(.2, 100, 100, .5, 100, 100), doubtful),
  list("nearly past", test(0, 90, 100, .6, 62, 100), doubtful), list("none grew", test(.5, 0, 50), own))
K <- seq(-7, 10, .004); B <- seq(-6, 6, .004); quantiles <- NULL
for (case in cases) {
  tests <- case[[2]]; prior <- case[[3]]
  logs <- outer(dnorm(K, prior[1], prior[2], log = TRUE), dnorm(B, prior[3], prior[4], log = TRUE), "+")
  for (i in seq_len(nrow(tests))) { eta <- outer(K, exp(B) * tests[i, 1], "-"); s <- tests[i, 2]; n <- tests[i, 3]
    logs <- logs + (if (s > 0) s * pnorm(eta, log.p = TRUE) else 0) + (if (n > s) (n - s) * pnorm(-eta, log.p = TRUE) else 0) }
  keep <- which(logs > max(logs) - 25, arr.ind = TRUE); weight <- exp(logs[keep] - max(logs)); weight <- weight / sum(weight)
  for (threshold in c(.85, .7)) {
    D <- pmax(0, (K[keep[, 1]] - qnorm(threshold)) * exp(-B[keep[, 2]])) # below from the start: 0
    order <- order(D); cumulative <- cumsum(weight[order]) - weight[order] / 2
    for (chance in c(.05, .1, .5, .9, .95)) quantiles <- rbind(quantiles, data.frame(name = case[[1]], threshold = threshold, chance = chance,
      probits = if (sum(weight[D == 0]) >= chance) 0 else approx(cumulative, D[order], chance, ties = "ordered")$y))
  }
  rm(logs, keep, weight); gc()
}
inputs <- do.call(rbind, lapply(cases, function(case) { t <- case[[2]]; p <- case[[3]]; if (nrow(t) == 0) t <- matrix(c(-1, 0, 0), ncol = 3)
  data.frame(name = case[[1]], initialMean = p[1], initialSd = p[2], rateMean = p[3], rateSd = p[4], probitsLost = t[, 1], germinated = t[, 2], sown = t[, 3]) }))
write_golden("date-below-threshold", list(lots = inputs, quantiles = quantiles))
