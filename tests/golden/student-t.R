# Writes student-t.json: quantiles of Student's t by R's qt. Run from the repository root: Rscript tests/golden/student-t.R
source("tests/golden/write-table.R")
grid <- expand.grid(probability = c(1e-6, 0.001, 0.025, 0.05, 0.3, 0.49, 0.5, 0.6, 0.9, 0.95, 0.975, 0.995, 0.9999),
                    degreesOfFreedom = c(1, 2, 3, 5, 7, 15, 30, 120, 1000))
grid$t <- qt(grid$probability, grid$degreesOfFreedom)
write_golden("student-t", list(rows = grid))
