# The work of RateSpeed.gammaPrior and AgeingSpeed in R, as one would write it there without loops over units, on data drawn in the
# same way, in CPU seconds of one thread:
# Rscript analytics/bench/src/main/R/rates.R [UNITS [UNITS OF VIRTUAL AGE]]
given <- as.numeric(commandArgs(trailingOnly = TRUE))
n <- if (length(given) > 0) given[1] else 1e6
m <- if (length(given) > 1) given[2] else 2e4
cpu <- function(what, expression) {
  seconds <- sum(system.time(expression)[1:2])
  cat(sprintf("%-55s %8.2f s\n", what, seconds))
}
set.seed(20260101)

# Hidden failures: nine tenths at about .06 a year, a tenth at about .5; 1 to 14 tests about a year apart.
rate <- ifelse(runif(n) < .1, rgamma(n, 8, scale = .5 / 8), rgamma(n, 4, scale = .06 / 4)) / 365.25
tests <- sample(14, n, TRUE)
held <- numeric(n) # days that ended in a pass
days <- vector("list", 14)
failed <- vector("list", 14)
for (k in 1:14) {
  days[[k]] <- 335 + floor(runif(n) * 61)
  failed[[k]] <- k <= tests & runif(n) < -expm1(-rate * days[[k]])
  held <- held + ifelse(k <= tests & !failed[[k]], days[[k]], 0)
}
nodes <- exp(seq(log(1e-6), log(1e-2), length.out = 60))
likelihood <- NULL
cpu(sprintf("gamma prior of rates on 60 nodes, %.0f", n), {
  logs <- outer(held, -nodes)
  for (k in 1:14) {
    hit <- which(failed[[k]])
    logs[hit, ] <- logs[hit, ] + log(-expm1(-outer(days[[k]][hit], nodes)))
  }
  likelihood <- exp(logs - do.call(pmax, as.data.frame(logs)))
  rm(logs)
  weights <- function(p) {
    w <- dgamma(nodes, exp(p[1]), rate = exp(p[2])) * nodes
    w / sum(w)
  }
  fit <- optim(c(0, 8), function(p) -sum(log(likelihood %*% weights(p))))
})
rm(likelihood)

# Virtual age (Kijima I): Weibull of shape 1.8 and scale 8 years, twelve tests a year apart; cleaning leaves .6 of the age
# gained, a new seal .05. A test finds a failure with 1 - exp(-hazard gained).
hazard <- function(age, shape, scale) (age / scale)^shape
action <- matrix(0L, m, 12) # what followed: 0 nothing, 1 cleaned, 2 replaced
found <- matrix(FALSE, m, 12)
age <- numeric(m)
for (k in 1:12) {
  gained <- hazard(age + 1, 1.8, 8) - hazard(age, 1.8, 8)
  found[, k] <- runif(m) < -expm1(-gained)
  action[, k] <- ifelse(found[, k], 1L + (runif(m) < .5), 0L)
  age <- ifelse(action[, k] == 0L, age + 1, age + c(.6, .05)[pmax(action[, k], 1L)])
}
minus <- function(p) {
  shape <- exp(p[1])
  scale <- exp(p[2])
  left <- plogis(p[3:4])
  age <- numeric(m)
  sum <- 0
  for (k in 1:12) {
    gained <- hazard(age + 1, shape, scale) - hazard(age, shape, scale)
    sum <- sum + sum(ifelse(found[, k], log(-expm1(-gained)), -gained))
    age <- age + ifelse(action[, k] == 0L, 1, left[pmax(action[, k], 1L)])
  }
  -sum
}
cpu(sprintf("virtual age, units alike, 12 tests each, %.0f", m), optim(c(.3, 2, 0, -1), minus, method = "BFGS"))
