source("tests/golden/write-table.R")
sets <- list(list(c(10, 10, 10), c(8, 3, 6)), list(c(50, 50, 50), c(45, 38, 41)), list(c(100, 100, 100), c(90, 96, 88)), list(c(25, 50, 100, 25), c(20, 45, 92, 25)),
  list(c(400, 400, 400), c(392, 380, 388)), list(c(5, 7, 6, 9, 4), c(5, 0, 3, 9, 1)), list(c(30, 30), c(22, 29)), list(c(200, 200, 200), c(200, 200, 199)),
  list(c(40, 60, 20), c(0, 0, 3)), list(c(1, 1, 1), c(1, 0, 1)), list(c(50, 50, 50, 50), c(46, 44, 49, 41)))
out <- do.call(rbind, lapply(sets, function(s) {
  m <- rbind(s[[2]], s[[1]] - s[[2]])
  data.frame(trials = I(list(s[[1]])), successes = I(list(s[[2]])), pValue = fisher.test(m, workspace = 2e8)$p.value)
}))
write_golden("exact-homogeneity", list(rows = out))
