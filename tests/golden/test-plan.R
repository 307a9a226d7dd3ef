# Plans of a test weighed by what is believed of a lot: limits of single tests with qbinom/pbinom, chances of a clear answer
# over a ladder of viabilities a point apart, the fixed size chosen by trying all, and plans in groups path by path.
source("tests/golden/write-table.R")
TIE <- 1 + 1e-10
limit <- 0.05
margin_of <- function(percent) min(0.05, floor((100 - percent) * 0.6 * 10) / 1000)
sizes <- c(20, 30, 40, 50, 60, 75, 100, 150, 200, 400)
# Belief: probit viability is normal; what lies between two whole percents counts as the middle between them.
belief_of <- function(mean, sd) diff(c(0, pnorm(qnorm(seq(0.01, 0.99, 0.01)), mean, sd), 1))
middle <- seq(0.005, 0.995, 0.01)
limits <- function(n, poor, good) {
  keep <- which(pbinom(0:n - 1, n, poor, lower.tail = FALSE) <= limit * TIE)[1] - 1 # NA: no count
  below <- which(pbinom(0:n, n, good) <= limit * TIE); regrow <- if (length(below)) max(below) - 1 else NA
  if (!is.na(keep) && !is.na(regrow) && regrow >= keep) {
    even <- log((1 - poor) / (1 - good)) / log(good * (1 - poor) / (poor * (1 - good)))
    cuts <- keep:(regrow + 1); cut <- cuts[which.min(abs(cuts - ceiling(n * even)))]
    keep <- cut; regrow <- cut - 1
  }
  c(regrow = regrow, keep = keep)
}
single <- list(); chosen <- list()
for (percent in c(50, 70, 80, 85, 93, 97)) for (mean in c(-0.5, 0.8, 1.3, 2, 2.6)) for (sd in c(0.05, 0.3, 0.9)) {
  poor <- percent / 100 - margin_of(percent); good <- percent / 100 + margin_of(percent); belief <- belief_of(mean, sd)
  clear <- numeric(0)
  for (n in sizes) {
    l <- limits(n, poor, good)
    keep <- if (is.na(l[["keep"]])) 0 * middle else pbinom(l[["keep"]] - 1, n, middle, lower.tail = FALSE)
    regrow <- if (is.na(l[["regrow"]])) 0 * middle else pbinom(l[["regrow"]], n, middle)
    wrong <- ifelse(middle <= poor, keep, 0) + ifelse(middle >= good, regrow, 0)
    clear <- c(clear, sum(belief * (keep + regrow)))
    single[[length(single) + 1]] <- data.frame(line = percent / 100, mean = mean, sd = sd, seeds = n, regrowAtMost = l[["regrow"]], keepAtLeast = l[["keep"]],
      keep = sum(belief * keep), regrow = sum(belief * regrow), wrong = sum(belief * wrong))
  }
  for (spare in c(35, 78)) {
    may <- sizes <= spare & sizes >= min(40, max(sizes[sizes <= spare])); enough <- may & clear >= 0.9
    best <- if (any(enough)) sizes[enough][1] else sizes[may & clear >= max(clear[may]) - 0.05][1]
    chosen[[length(chosen) + 1]] <- data.frame(line = percent / 100, mean = mean, sd = sd, seedsToSpare = spare, seeds = best, enough = as.numeric(any(enough)))
  }
}
groups <- list()
plans <- list(
  list(line = 0.85, spare = 400, regrow = c(31, 66, 100, 134, 168, 205), keep = c(37, 72, 106, 140, 174, 206)),
  list(line = 0.85, spare = 199, regrow = c(31, 65, 100, 136), keep = c(38, 72, 106, 137)),
  list(line = 0.93, spare = 240, regrow = c(36, 74, 112), keep = c(40, 77, 113)))
for (p in plans) for (mean in c(0.8, 1.3, 2)) for (sd in c(0.05, 0.9)) {
  percent <- 100 * p$line; poor <- p$line - margin_of(percent); good <- p$line + margin_of(percent); belief <- belief_of(mean, sd)
  one <- sapply(middle, function(v) {
    state <- c(1, rep(0, 40 * length(p$keep))); keep <- regrow <- seeds <- 0 # state[k + 1]: k germinated, still going on
    for (look in seq_along(p$keep)) {
      seeds <- seeds + 40 * sum(state); next_state <- 0 * state
      for (k in which(state > 0) - 1) { to <- k + 0:40; ok <- to < length(state); next_state[to[ok] + 1] <- next_state[to[ok] + 1] + (state[k + 1] * dbinom(0:40, 40, v))[ok] }
      at <- seq_along(next_state) - 1
      keep <- keep + sum(next_state[at >= p$keep[look]]); regrow <- regrow + sum(next_state[at <= p$regrow[look]])
      next_state[at >= p$keep[look] | at <= p$regrow[look]] <- 0; state <- next_state
    }
    c(keep, regrow, seeds)
  })
  wrong <- ifelse(middle <= poor, one[1, ], 0) + ifelse(middle >= good, one[2, ], 0)
  row <- data.frame(line = p$line, seedsToSpare = p$spare, mean = mean, sd = sd, keep = sum(belief * one[1, ]), regrow = sum(belief * one[2, ]),
    wrong = sum(belief * wrong), expectedSeeds = sum(belief * one[3, ]))
  row$regrowAtMost <- list(p$regrow); row$keepAtLeast <- list(p$keep)
  groups[[length(groups) + 1]] <- row
}
write_golden("test-plan", list(single = do.call(rbind, single), chosen = do.call(rbind, chosen), groups = do.call(rbind, groups)))
