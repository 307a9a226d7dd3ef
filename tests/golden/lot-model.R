# Golden chances of the lot model by adaptive quadrature (R's integrate, inner over K, outer over b in pieces).
# Run from the repository root: Rscript tests/golden/lot-model.R   (about two minutes)
test <- function(...) matrix(c(...), ncol = 3, byrow = TRUE) # probits lost, germinated, sown
none <- matrix(numeric(0), ncol = 3)
own <- c(1.75, .75, 0, .5); doubtful <- c(1.75, .75, .3, .9); wide <- c(0, 5, 0, 5)
cases <- list(
  list('no tests, own constants', none, own, 0), list('no tests, doubtful', none, doubtful, 0), list('no tests, wide', none, wide, 0),
  list('none of 50 grew', test(.5, 0, 50), own, 0), list('none of 400 grew at the start', test(0, 0, 400), doubtful, 0),
  list('all of 50 grew', test(.5, 50, 50), own, 0), list('all of 400 grew, five times', test(0, 400, 400, .2, 400, 400, .4, 400, 400, .6, 400, 400, .8, 400, 400), doubtful, 0),
  list('contradictory', test(1, 95, 100, 1.05, 20, 100), own, 0), list('contradictory, wide', test(1, 95, 100, 1.05, 20, 100), wide, 0),
  list('rising', test(0, 60, 100, .5, 80, 100, 1, 95, 100), doubtful, 0), list('rising, wide', test(0, 60, 100, .5, 80, 100, 1, 95, 100), wide, 0),
  list('only at the start', test(0, 93, 100, 0, 90, 100), doubtful, 0), list('far ageing', test(20, 300, 400, 50, 10, 400), wide, 0),
  list('five large tests', test(0, 388, 400, .5, 372, 400, 1, 350, 400, 1.5, 300, 400, 2, 250, 400), doubtful, 0),
  list('ordinary', test(0, 96, 100, .4, 91, 100, .9, 82, 100), own, 0), list('one small test', test(.3, 18, 20), doubtful, 0),
  list('ordinary, correlated', test(0, 96, 100, .4, 91, 100, .9, 82, 100), own, .02),
  list('contradictory, correlated', test(1, 95, 100, 1.05, 20, 100), doubtful, .1),
  list('all grew, correlated', test(0, 100, 100, .5, 100, 100), doubtful, .05), list('none grew, correlated', test(.5, 0, 100), own, .3),
  list('half alive at far ageing', test(50, 200, 400, 0, 200, 400, 1, 190, 400), wide, 0))
loglik <- function(eta, s, n, rho) {
  if (rho == 0) return((if (s > 0) s * pnorm(eta, log.p = TRUE) else 0) + (if (n > s) (n - s) * pnorm(-eta, log.p = TRUE) else 0))
  theta <- (1 - rho) / rho
  rising <- function(loga, m) if (m == 0) 0 else loga + lgamma(exp(loga) + m) - lgamma(exp(loga) + 1)
  rising(log(theta) + pnorm(eta, log.p = TRUE), s) + rising(log(theta) + pnorm(-eta, log.p = TRUE), n - s)
}
rows <- c()
for (case in cases) {
  tests <- case[[2]]; prior <- case[[3]]; rho <- case[[4]]
  logd <- function(K, b) {
    v <- dnorm(K, prior[1], prior[2], log = TRUE) + dnorm(b, prior[3], prior[4], log = TRUE)
    for (i in seq_len(nrow(tests))) v <- v + loglik(K - exp(b) * tests[i, 1], tests[i, 2], tests[i, 3], rho)
    v
  }
  reach <- 12 * prior[2]
  slice <- function(b) { # top and both ends of K at one b
    f <- function(K) logd(K, b)
    o <- optimize(f, prior[1] + c(-1, 1) * reach, maximum = TRUE, tol = 1e-9)
    edge <- function(sign) uniroot(function(d) f(o$maximum + sign * d) - o$objective + 34, c(0, 60 * prior[2]), tol = 1e-6)$root
    c(o$maximum, o$objective, o$maximum - edge(-1), o$maximum + edge(1))
  }
  lo <- prior[3] - 9 * prior[4]; hi <- prior[3] + 9 * prior[4]
  for (zoom in 1:6) {
    grid <- seq(lo, hi, length.out = 200); tops <- sapply(grid, function(b) optimize(function(K) logd(K, b), prior[1] + c(-1, 1) * reach, maximum = TRUE, tol = 1e-9)$objective)
    keep <- range(which(tops > max(tops) - 30)); lo <- grid[max(1, keep[1] - 1)]; hi <- grid[min(200, keep[2] + 1)]
  }
  top <- max(tops)
  inner <- function(b, limit) sapply(b, function(b1) {
    s <- slice(b1); f <- function(K) exp(logd(K, b1) - s[2])
    to <- min(limit(b1), s[4])
    if (to <= s[3]) return(0)
    ends <- sort(unique(c(s[3], min(s[1], to), to)))
    sum(sapply(seq_len(length(ends) - 1), function(i) integrate(f, ends[i], ends[i + 1], rel.tol = 1e-8, stop.on.error = FALSE)$value)) * exp(s[2] - top)
  })
  outer <- function(limit) { ends <- seq(lo, hi, length.out = 13); sum(sapply(1:12, function(i) integrate(inner, ends[i], ends[i + 1], limit = limit, rel.tol = 1e-5, abs.tol = 1e-8 * (hi - lo), subdivisions = 400, stop.on.error = FALSE)$value)) }
  total <- outer(function(b) Inf)
  for (query in list(c(0, .85), c(.3, .95), c(1, .5), c(1, .85), c(2, .1), c(5, .5), c(50, .85))) {
    D <- query[1]; z <- qnorm(query[2])
    p <- outer(function(b) z + exp(b) * D) / total
    rows <- c(rows, sprintf('{"name":"%s","tests":[%s],"prior":{"initial":{"mean":%g,"sd":%g},"logRate":{"mean":%g,"sd":%g}},"rho":%g,"probitsLost":%g,"threshold":%g,"chance":%.17g}',
      case[[1]], paste(apply(tests, 1, function(t) sprintf('{"probitsLost":%g,"germinated":%g,"sown":%g}', t[1], t[2], t[3])), collapse = ','), prior[1], prior[2], prior[3], prior[4], rho, D, query[2], p))
  }
  cat(case[[1]], '\n')
}
writeLines(c('{', sprintf('"madeBy":"%s, tests/golden/lot-model.R",', R.version.string), '"seed":null,', '"rows":[', paste(rows, collapse = ",\n"), ']}'), 'tests/golden/lot-model.json')
