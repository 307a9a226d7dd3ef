source("tests/golden/write-table.R")
pairs <- rbind(c(0, 1, 0, 1), c(0, 1, 1, 1), c(1, 1, 1, 1), c(8, 10, 3, 10), c(10, 10, 0, 10), c(45, 50, 38, 50), c(90, 100, 80, 100),
  c(360, 400, 340, 400), c(400, 400, 400, 400), c(0, 400, 400, 400), c(380, 400, 170, 200), c(23, 25, 350, 400), c(200, 400, 210, 400), c(5, 7, 6, 11), c(0, 50, 6, 50))
p <- apply(pairs, 1, function(v) fisher.test(matrix(c(v[1], v[2] - v[1], v[3], v[4] - v[3]), 2))$p.value)
write_golden("fisher-exact", list(rows = data.frame(s1 = pairs[, 1], n1 = pairs[, 2], s2 = pairs[, 3], n2 = pairs[, 4], pValue = p)))
