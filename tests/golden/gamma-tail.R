# Writes gamma-tail.json: upper tails of the gamma distribution over shapes where a library's incomplete gamma may change method.
# Run from the repository root: Rscript tests/golden/gamma-tail.R
source("tests/golden/write-table.R")
grid <- expand.grid(shape = c(0.01, 0.5, 1, 7.5, 19, 21, 60, 199, 201, 499, 500, 501, 800, 1000, 2304, 5000, 20000, 100000), z = c(-30, -7, -3, -1, -0.01, 0, 0.01, 1, 3, 7, 20))
grid$value <- grid$shape + grid$z * sqrt(grid$shape)
grid <- grid[grid$value > 0, ]
grid$tail <- pgamma(grid$value, grid$shape, lower.tail = FALSE)
grid <- grid[grid$tail > 1e-290, c("shape", "value", "tail")]
write_golden("gamma-tail", list(tails = grid))
