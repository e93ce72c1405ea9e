# Reference values for the interval of a mean over specimens and over everything that specimens share, lengthened for skewness, in base R only (values kept from R 4.2.2).
# Run in tests/ReferenceData: Rscript scripts/clustered_mean.R. Routes differ from the program's: intervals from t.test() and confint() of lm(), sums over runs from the sandwich of
# indicator matrices, components of variance from anova(lm()), and Hall's transformation g(t) = t + g t²/3 + g² t³/27 + g/(6n) solved by uniroot() instead of by its closed inverse.
set.seed(20261129)
num <- function(v) trimws(formatC(v, digits = 17, format = "g"))
skewness <- function(p) { n <- length(p); if (n < 3 || diff(range(p)) == 0) 0 else n / ((n - 1) * (n - 2)) * sum(((p - mean(p)) / sd(p))^3) }
hall <- function(t, g, n) t + g * t^2 / 3 + g^2 * t^3 / 27 + g / (6 * n)
# The distance from the mean, in standard deviations, whose transform is x; the transformation only rises.
solve_hall <- function(x, g, n) {
  wide <- 1; while (hall(-wide, g, n) > x || hall(wide, g, n) < x) wide <- 2 * wide
  t <- uniroot(function(t) hall(t, g, n) - x, c(-wide, wide), tol = 1e-15, maxiter = 10000)$root
  for (i in 1:3) { d <- 1 + 2 * g * t / 3 + g^2 * t^2 / 9; if (d > 1e-4) t <- t - (hall(t, g, n) - x) / d }
  t
}
factors <- function(g, n, level) {
  q <- qt((1 + level) / 2, n - 1)
  c(down = max(1, sqrt(n) * solve_hall(q / sqrt(n), g, n) / q), up = max(1, -sqrt(n) * solve_hall(-q / sqrt(n), g, n) / q))
}
write_out <- function(data, file) {
  con <- file(file, "w")
  writeLines(sprintf("# %s; scripts/clustered_mean.R", R.version.string), con)
  write.csv(data, con, row.names = FALSE, quote = FALSE)
  close(con)
}

# Factors alone --------------------------------------------------------------------------------------------------------
grid <- expand.grid(skewness = c(-6, -3, -1.5, -0.5, -1e-3, -1e-7, 0, 1e-10, 1e-5, 0.1, 0.5, 1, 2, 4, 6), n = c(5, 10, 20, 40, 80, 200), level = c(0.90, 0.95))
both <- t(mapply(factors, grid$skewness, grid$n, grid$level))
write_out(data.frame(skewness = num(grid$skewness), n = grid$n, level = grid$level, downward = num(both[, 1]), upward = num(both[, 2])), "computed/skewness_factors.csv")

# Whole intervals ------------------------------------------------------------------------------------------------------
# One way of sharing is a column of numbers; 0 in a whole column: the case does not have it.
case <- function(name, change, day = 0, baseline = 0, delayed = 0, person = 0)
  data.frame(case = name, change = round(change, 4), day = day, baseline = baseline, delayed = delayed, person = person)
shift <- function(key, sd) rnorm(max(key), 0, sd)[key]
d10 <- rep(1:10, 4); d5 <- rep(1:5, 8); cross_b <- rep(1:8, 5); cross_d <- rep(1:5, each = 8)
uneven <- c(rep(1, 20), rep(2:6, each = 4)); five_of_ten <- (d10 + 1) %/% 2
skewed <- function(n, s) (exp(rnorm(n, 0, s)) - exp(s^2 / 2)) / sqrt((exp(s^2) - 1) * exp(s^2))
cases <- rbind(
  case("nested runs", 4 + rnorm(40, 0, 3) + shift(d10, 1.4) + shift(d10, 1.4), d10, d10, d10),
  case("five delayed runs of ten days", -3 + rnorm(40, 0, 2) + shift(d10, 1.4) + shift(five_of_ten, 3), d10, d10, five_of_ten),
  case("crossed runs", 2 + rnorm(40, 0, 2) + shift(cross_b, 3) + shift(cross_d, 3), cross_b, cross_b, cross_d),
  case("crossed runs without an error", 2 + rnorm(40, 0, 3), cross_b, cross_b, cross_d),
  case("long tail upward", 3 + 3 * skewed(40, 1) + shift(d5, 1), d5, d5, d5),
  case("long tail downward", -3 - 3 * skewed(24, 1), rep(1:6, 4), rep(1:6, 4), rep(1:12, 2)),
  case("heavy tails", 1 + 2 * rt(35, 3) + shift(rep(1:7, 5), 1), rep(1:7, 5), rep(1:7, 5), rep(1:7, each = 5)),
  case("persons", 5 + rnorm(40) + shift(rep(1:5, each = 8), 3), d10, d10, d10, rep(1:5, each = 8)),
  case("uneven days", 6 + rnorm(40, 0, 2) + shift(uneven, 2), uneven, uneven, uneven),
  case("one delayed run", 6 + rnorm(20, 0, 2), rep(1:5, 4), rep(1:5, 4), 1),
  case("ties", round(rnorm(30, 0, 1.2)), rep(1:6, 5), rep(1:6, 5), rep(1:6, each = 5)),
  case("a run for each", c(0.3, -1.1, 2.4, 0.9, 5.2, -0.7), 1:6, 1:6, 1:6),
  case("unbalanced crossing", 1 + rnorm(30, 0, 1.5) + shift(b <- sample(1:7, 30, TRUE), 2) + shift(d <- sample(1:6, 30, TRUE), 2), b, b, d),
  case("three values", c(1, 2, 7), c(1, 1, 2), c(1, 1, 2), c(1, 2, 2)),
  case("constant", rep(2.5, 8), rep(1:4, 2), rep(1:4, 2), rep(1:4, 2)))
write_out(cases, "computed/clustered_mean_values.csv")
level <- 0.90
out <- NULL
add <- function(case, names, values) out <<- rbind(out, data.frame(case = case, quantity = names, value = num(values)))
# Variance of the mean of cluster means, from the sums of squares of an indicator matrix.
error_of <- function(p, key) { z <- model.matrix(~ 0 + factor(key)); m <- drop(crossprod(z, p)) / colSums(z); k <- length(m); sqrt((sum(m^2) - sum(m)^2 / k) / (k - 1) / k) }
for (name in unique(cases$case)) {
  d <- cases[cases$case == name, ]; p <- d$change; n <- length(p)
  g <- skewness(p); f <- factors(g, n, level)
  add(name, c("skewness", "downward", "upward"), c(g, f))
  parts <- list()
  part <- function(source, center, lower, upper) {
    parts[[source]] <<- c(center, lower, upper)
    add(name, paste(source, c("mean", "lower", "upper")), c(center, lower, upper))
  }
  ci <- if (diff(range(p)) == 0) c(p[1], p[1]) else t.test(p, conf.level = level)$conf.int
  part("Specimens", mean(p), ci[1], ci[2])
  for (way in list(c("day", "CollectionDays"), c("baseline", "BaselineRuns"), c("delayed", "DelayedRuns"), c("person", "Persons"))) {
    key <- d[[way[1]]]; k <- length(unique(key))
    if (k < 2 || k == n) next
    m <- tapply(p, key, mean); ci <- suppressWarnings(confint(lm(m ~ 1), level = level)); part(way[2], mean(m), ci[1], ci[2])
    if (diff(range(p)) == 0) next
    a <- suppressWarnings(anova(lm(p ~ factor(key)))); size <- table(key)
    shared <- max(0, (a[1, 3] - a[2, 3]) / ((n - sum(size^2) / n) / (k - 1)))
    add(name, paste(way[2], c("between", "within", "p", "shared", "error")), c(a[1, 3], a[2, 3], a[1, 5], sqrt(shared), sqrt(shared * sum((size / n)^2))))
  }
  kb <- length(unique(d$baseline)); kd <- length(unique(d$delayed)); pair <- paste(d$baseline, d$delayed)
  if (kb > 1 && kd > 1 && length(unique(pair)) > max(kb, kd)) {
    v <- error_of(p, d$baseline)^2 + error_of(p, d$delayed)^2 - error_of(p, pair)^2
    if (v > 0) { h <- qt((1 + level) / 2, min(kb, kd) - 1) * sqrt(v); part("CrossedRuns", mean(p), mean(p) - h, mean(p) + h) }
  }
  ends <- sapply(parts, function(i) c(i[1] - f[["down"]] * (i[1] - i[2]), i[1] + f[["up"]] * (i[3] - i[1])))
  add(name, c("lower", "upper"), c(min(ends[1, ]), max(ends[2, ])))
}
write_out(out, "computed/clustered_mean.csv")
