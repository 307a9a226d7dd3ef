source("tests/golden/write-table.R")
# The alive share of a test with side samples: (found - A)^2 = z^2 V(A), the other unknowns at their most likely values
# given A. Here these come from plain expectation-maximisation (share out the seeds not looked at, count, repeat), in the
# program from a quadratic and one bracket.
constrained <- function(N, normal, H, m, g, A) {
  u <- H - m; d <- m - g; R <- N - normal - sum(H); s <- rep(0.5, length(H))
  for (i in 1:200000) {
    al <- g + u * s; de <- d + u * (1 - s)
    a <- A * al / (normal + sum(al)); b <- (1 - A) * de / (R + sum(de))
    new <- ifelse(a + b > 0, a / (a + b), 0)
    change <- max(abs(new - s)); s <- new
    if (change < 1e-14) break
  }
  sum((a + b) * s * (1 - s) * (H / m - 1))
}
interval <- function(N, normal, H, m, g, level) {
  found <- (normal + sum(H * g / m)) / N; z2 <- qnorm((1 - level) / 2)^2
  f <- function(A) (found - A)^2 - z2 * (A * (1 - A) + constrained(N, normal, H, m, g, A)) / N
  c(found, if (found == 0) 0 else uniroot(f, c(1e-9, found), tol = 1e-11)$root, if (found == 1) 1 else uniroot(f, c(found, 1 - 1e-9), tol = 1e-11)$root)
}
cases <- list(  # seeds, normal, hard, looked, alive, fresh, looked, alive
  c(100, 60, 30, 10, 8, 0, 0, 0), c(100, 60, 30, 10, 10, 0, 0, 0), c(100, 60, 30, 10, 0, 0, 0, 0), c(200, 120, 40, 20, 17, 30, 10, 6),
  c(50, 20, 25, 1, 1, 0, 0, 0), c(50, 20, 25, 5, 3, 5, 5, 2), c(400, 380, 12, 6, 6, 4, 2, 1), c(100, 10, 80, 20, 11, 5, 5, 0),
  c(100, 60, 40, 10, 7, 0, 0, 0), c(25, 3, 20, 10, 9, 2, 1, 0), c(400, 0, 400, 50, 45, 0, 0, 0), c(100, 60, 30, 30, 22, 0, 0, 0))
out <- do.call(rbind, lapply(cases, function(v) do.call(rbind, lapply(c(0.8, 0.95, 0.999), function(level) {
  H <- v[c(3, 6)]; use <- H > 0
  r <- interval(v[1], v[2], H[use], v[c(4, 7)][use], v[c(5, 8)][use], level)
  data.frame(seeds = v[1], normal = v[2], hard = v[3], hardLooked = v[4], hardAlive = v[5], fresh = v[6], freshLooked = v[7], freshAlive = v[8], level = level,
    proportion = r[1], lower = r[2], upper = r[3])
}))))
write_golden("side-samples", list(rows = out))
