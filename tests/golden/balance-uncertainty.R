# Writes balance-uncertainty.json: standard deviations of packets' balances from whole covariance matrices of their
# lines, s' V s, with V built entry by entry: two lines weighed with the same thousand-seed weight have the covariance
# c^2 N_i N_j. Run from the repository root: Rscript tests/golden/balance-uncertainty.R
source("tests/golden/write-table.R")
seed <- 20261130; set.seed(seed)
v <- 0.3; own <- 0.03; usual <- 0.25
kinds <- c("counted", "own", "usual", "merged")
one <- function(case) {
  n <- sample(2:7, 1); tsw <- 10^runif(1, -1, 2.5)
  kind <- sample(kinds, n, replace = TRUE, prob = c(0.3, 0.4, 0.2, 0.1)); if (kind[1] == "merged") kind[1] <- "own"
  step <- 10^-sample(0:3, n, replace = TRUE)
  size <- c(sample(2000:40000, 1), sample(1:250, n - 1, replace = TRUE)); sign <- c(1, sample(c(-1, -1, -1, 1), n - 1, replace = TRUE))
  # grams as read: whole steps that end in another digit than 0, so that the last decimal tells the step
  g <- pmax(1, round(size * tsw / 1000 / step)); g <- ifelse(step < 1 & g %% 10 == 0, g + 1, g); grams <- round(g * step, 4)
  weighed <- kind %in% c("own", "usual")
  N <- ifelse(weighed, pmax(1, round(grams * 1000 / tsw)), size); if (sum(N * sign) <= 0) return(NULL)
  if (any(cumsum(N * sign) == 0)) return(NULL)
  V <- matrix(0, n, n)
  c_of <- c(counted = 0, own = own, usual = usual, merged = 0)[kind]
  for (i in 1:n) for (j in 1:n) {
    if (weighed[i] && weighed[j] && kind[i] == kind[j]) V[i, j] <- c_of[i] * N[i] * c_of[j] * N[j]
    if (i == j && weighed[i]) V[i, i] <- V[i, i] + v^2 * N[i] + (step[i] * N[i] / grams[i])^2 / 12
    if (i == j && kind[i] == "merged") V[i, i] <- (N[i] / 20)^2
  }
  b <- sum(sign * N); sd <- sqrt(as.numeric(t(sign) %*% V %*% sign)); z <- qnorm(0.95)
  list(seeds = sign * N, grams = ifelse(weighed, sign * grams, 0), sds = sqrt(diag(V)), kinds = kind, balance = b, sd = sd,
       lower = max(0, b - z * sd), upper = max(0, b + z * sd))
}
cases <- Filter(Negate(is.null), lapply(1:160, one))
get <- function(name) sapply(cases, function(x) x[[name]])
table <- data.frame(seeds = I(lapply(cases, `[[`, "seeds")), grams = I(lapply(cases, `[[`, "grams")), sds = I(lapply(cases, `[[`, "sds")),
                    balance = get("balance"), sd = get("sd"), lower = get("lower"), upper = get("upper"))
table$errors <- I(lapply(cases, function(x) c(counted = 0, own = own, usual = usual, merged = -1)[x$kinds]))
write_golden("balance-uncertainty", list(rows = table), seed)
