source("tests/golden/write-table.R")
grid <- expand.grid(chiSquare = c(0, 1e-6, 0.1, 1, 2.5, 7.814727903251179, 20, 60, 300, 1200), degreesOfFreedom = c(1, 2, 3, 7, 15, 60, 1500))
grid$upperTail <- pchisq(grid$chiSquare, grid$degreesOfFreedom, lower.tail = FALSE)
write_golden("chi-square", list(rows = grid))
