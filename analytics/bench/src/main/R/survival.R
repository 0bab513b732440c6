# The work of SurvivalSpeed, EnclosedEndsSpeed and RecurrenceSpeed in R, on data drawn in the same way, in CPU seconds of
# one thread:
# Rscript analytics/bench/src/main/R/survival.R   (Debian: r-cran-survival; r-cran-npsurv for the curve without a shape)
suppressPackageStartupMessages(library(survival))
cpu <- function(what, expression) {
  seconds <- sum(system.time(expression)[1:2])
  cat(sprintf("%-45s %8.3f s\n", what, seconds))
}
set.seed(20260101)
n <- 1e6
end <- 1 + floor(3000 * (-log(runif(n)))^(1 / 1.5))
entry <- floor(runif(n) * end)
seen <- entry + floor(runif(n) * 3650)
status <- as.numeric(end <= seen)
time <- ifelse(status == 1, end, seen)
kept <- time > entry
cpu("Kaplan-Meier, 1,000,000, late entry", survfit(Surv(entry, time, status) ~ 1, subset = kept))
cpu("Kaplan-Meier, 1,000,000", survfit(Surv(time, status) ~ 1, subset = kept))

looked <- function(n) {
  end <- 1 + floor(3000 * (-log(runif(n)))^(1 / 1.5))
  looks <- sample(15, n, TRUE)
  held <- numeric(n)
  found <- rep(Inf, n)
  day <- 1 + floor(runif(n) * 365)
  for (k in 1:15) {
    open <- is.infinite(found) & k <= looks
    hit <- open & end <= day
    found[hit] <- day[hit]
    held[open & !hit] <- day[open & !hit]
    day <- day + 335 + floor(runif(n) * 60)
  }
  data.frame(held, found)
}
lives <- looked(1e6)
left <- ifelse(lives$held == 0, NA, lives$held)
right <- ifelse(is.finite(lives$found), lives$found, NA)
known <- !(is.na(left) & is.na(right))
for (d in c("weibull", "lognormal")) {
  cpu(paste0(d, ", 1,000,000 enclosed"), survreg(Surv(left[known], right[known], type = "interval2") ~ 1, dist = d))
}
lives <- looked(1e5)
if (suppressWarnings(suppressPackageStartupMessages(require(npsurv)))) {
  cpu("no shape, 100,000 enclosed, npsurv", npsurv(cbind(lives$held, lives$found)))
}
n <- 1e6
entry <- floor(runif(n) * 500)
events <- rpois(n, .001 * rexp(n) * (2000 - entry))
id <- rep(seq_len(n), events)
day <- entry[id] + 1 + floor(runif(length(id)) * (2000 - entry[id]))
rows <- unique(data.frame(id = c(id, seq_len(n)), day = c(day, rep(2001, n)), event = c(rep(1, length(id)), rep(0, n))))
rows <- rows[order(rows$id, rows$day), ]
rows <- rows[!duplicated(rows[, c("id", "day")]), ]
first <- !duplicated(rows$id)
rows$begin <- ifelse(first, entry[rows$id], c(0, head(rows$day, -1)))
cpu(
  "mean of repeated events, robust, 1,000,000",
  survfit(Surv(begin, day, event) ~ 1, data = rows, id = id, robust = TRUE)
)

lives <- looked(1e4)
left <- ifelse(lives$held == 0, NA, lives$held)
right <- ifelse(is.finite(lives$found), lives$found, NA)
known <- !(is.na(left) & is.na(right))
cpu("no shape, 10,000 enclosed, survfit", survfit(Surv(left[known], right[known], type = "interval2") ~ 1))
