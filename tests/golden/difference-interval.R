source("tests/golden/write-table.R")
pairs <- rbind(c(56, 70, 48, 80), c(9, 10, 3, 10), c(6, 7, 2, 7), c(5, 56, 0, 29), c(0, 10, 0, 20), c(0, 10, 0, 10), c(10, 10, 0, 20), c(10, 10, 0, 10),
  c(1, 1, 0, 1), c(0, 1, 0, 1), c(1, 1, 1, 1), c(190, 200, 164, 200), c(400, 400, 400, 400), c(400, 400, 399, 400), c(88, 100, 340, 400), c(0, 400, 400, 400), c(48, 50, 38, 50), c(3, 5, 70, 400))
wilson <- function(s, n, level) { w <- suppressWarnings(prop.test(s, n, conf.level = level, correct = FALSE)$conf.int); c(if (s == 0) 0 else w[1], if (s == n) 1 else w[2]) }
out <- list()
for (level in c(0.5, 0.8, 0.95, 0.999)) for (i in seq_len(nrow(pairs))) {
  v <- pairs[i, ]; a <- wilson(v[1], v[2], level); b <- wilson(v[3], v[4], level); p <- v[1] / v[2]; q <- v[3] / v[4]
  out[[length(out) + 1]] <- data.frame(s1 = v[1], n1 = v[2], s2 = v[3], n2 = v[4], level = level,
    lower = p - q - sqrt((p - a[1])^2 + (b[2] - q)^2), upper = p - q + sqrt((a[2] - p)^2 + (q - b[1])^2))
}
write_golden("difference-interval", list(rows = do.call(rbind, out)))
