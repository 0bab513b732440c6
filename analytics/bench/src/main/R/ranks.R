# What RateSpeed.shrunkAndRanked does, as one would write it in R without loops over units, on units of the same kind: a
# prior by 50 EM steps on 160 rates, posterior mean, interval, P(above twice the mean), expected rank and list of claims;
# without intervals of ranks and P(in the worst ten). In CPU seconds of one thread; a million units take 1.3 GB a matrix:
# Rscript analytics/bench/src/main/R/ranks.R UNITS
n <- as.integer(commandArgs(TRUE)[1])
nodes <- 160
set.seed(1)
rate <- ifelse(runif(n) < .1, rgamma(n, 8, 8 / .5), rgamma(n, 4, 4 / .06))
tests <- sample(1:14, n, TRUE)
unit <- rep(1:n, tests)
years <- sample(335:395, length(unit), TRUE) / 365.25
failed <- runif(length(unit)) < 1 - exp(-rate[unit] * years)
lambda <- exp(seq(log(.002), log(3), length.out = nodes))

begin <- proc.time()
passed <- as.numeric(rowsum(ifelse(failed, 0, years), unit))
likelihood <- exp(-outer(passed, lambda))
left <- which(failed)
while (length(left) > 0) {
  now <- left[!duplicated(unit[left])]
  likelihood[unit[now], ] <- likelihood[unit[now], ] * (1 - exp(-outer(years[now], lambda)))
  left <- setdiff(left, now)
}
prior <- rep(1 / nodes, nodes)
for (step in 1:50) {
  marginal <- as.numeric(likelihood %*% prior)
  prior <- prior * as.numeric(crossprod(likelihood, 1 / marginal)) / n
}
posterior <- likelihood * rep(prior, each = n)
posterior <- posterior / rowSums(posterior)
mean_rate <- as.numeric(posterior %*% lambda)
upto <- posterior
for (g in 2:nodes) upto[, g] <- upto[, g] + upto[, g - 1]
lower <- lambda[max.col(upto > .025, "first")]
upper <- lambda[max.col(upto > .975, "first")]
wrong <- upto[, which.max(lambda > 2 * sum(prior * lambda))]
fleet <- colSums(posterior)
above <- rev(cumsum(rev(fleet))) - fleet / 2
rank <- as.numeric(posterior %*% above) + .5
listed <- sum(cumsum(sort(wrong)) / seq_len(n) <= .1)
spent <- proc.time() - begin
cat(n, "units:", spent[["user.self"]] + spent[["sys.self"]], "CPU seconds; ranks sum to",
  sum(rank) / (n * (n + 1) / 2), "of n (n + 1) / 2;", listed, "listed\n")
