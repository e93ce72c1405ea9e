# Reference values for distributions, locations, limits of agreement and proportions.
# Run from tests/ReferenceData:  Rscript scripts/location_and_agreement.R
# Base R only; writes into computed/. Numbers are printed with 17 significant digits.
folder <- "computed"
header <- function() paste0("# ", R.version.string, "; scripts/location_and_agreement.R")
write_table <- function(name, table) {
  path <- file.path(folder, name)
  text <- as.data.frame(lapply(table, function(column)
    if (is.numeric(column)) ifelse(is.na(column), "", sprintf("%.17g", column)) else column))
  writeLines(header(), path)
  suppressWarnings(write.table(text, path, append = TRUE, sep = ",", quote = FALSE, row.names = FALSE))
}

# Distributions
p <- c(1e-10, 1e-4, 0.005, 0.025, 0.05, 0.3, 0.4999999, 0.6, 0.9, 0.95, 0.975, 0.9995, 1 - 1e-9)
df <- c(1, 2, 3, 4, 7.5, 16, 39, 99, 199, 1999, 9999)
grid <- expand.grid(p = p, df = df)
grid$t <- qt(grid$p, grid$df)
write_table("student_t.csv", grid)
write_table("normal.csv", data.frame(p = p, z = qnorm(p)))

grid <- expand.grid(trials = c(1, 2, 5, 19, 40, 93, 200, 1000, 10000), part = c(0, 0.1, 0.5, 0.85, 0.97, 1), prob = c(0.001, 0.1, 0.5, 0.85, 0.95, 0.999))
grid$successes <- floor(grid$trials * grid$part)
grid$cdf <- pbinom(grid$successes, grid$trials, grid$prob)
write_table("binomial.csv", grid[, c("successes", "trials", "prob", "cdf")])

grid <- expand.grid(p = c(0.005, 0.025, 0.05, 0.5, 0.95, 0.975, 0.995), n = c(2, 3, 5, 10, 17, 40, 80, 200, 350))
grid$ncp <- 1.96 * sqrt(grid$n)
grid$t <- qt(grid$p, grid$n - 1, grid$ncp)
write_table("noncentral_t_quantile.csv", grid)

# Proportions
grid <- expand.grid(trials = c(1, 2, 10, 19, 20, 40, 59, 100, 200, 1000), missing = c(0, 1, 2, 5, 10, 19), level = c(0.9, 0.95, 0.99))
grid <- grid[grid$missing <= grid$trials, ]
grid$successes <- grid$trials - grid$missing
bound <- function(side, level) mapply(function(k, n, l) {
  interval <- binom.test(k, n, conf.level = l, alternative = side)$conf.int
  if (side == "less") interval[2] else interval[1]
}, grid$successes, grid$trials, level)
two <- t(mapply(function(k, n, l) binom.test(k, n, conf.level = l)$conf.int, grid$successes, grid$trials, grid$level))
# binom.test uses qbeta, exact to about 1e-12; the one-sided bounds are its own one-sided intervals.
grid$one_lower <- bound("greater", grid$level)
grid$one_upper <- bound("less", grid$level)
grid$two_lower <- two[, 1]
grid$two_upper <- two[, 2]
write_table("clopper_pearson.csv", grid[, c("successes", "trials", "level", "one_lower", "one_upper", "two_lower", "two_upper")])

# Samples: continuous, skewed, and rounded to one decimal (ties)
set.seed(20240611)
samples <- list(
  normal6 = rnorm(6, 1, 2), normal7 = rnorm(7), normal12 = rnorm(12, -3, 0.5), normal40 = rnorm(40, 2, 3),
  skewed25 = rlnorm(25, 0, 0.8), normal100 = rnorm(100), skewed250 = -rexp(250),
  rounded17 = round(rnorm(17, 0.2, 0.4), 1), rounded40 = round(rnorm(40, 0, 0.3), 1), far9 = 1e6 + rnorm(9))
write_table("samples.csv", data.frame(sample = rep(names(samples), lengths(samples)), value = unlist(samples)))

rows <- list()
for (name in names(samples)) for (level in c(0.9, 0.95)) {
  x <- samples[[name]]; n <- length(x); s <- sd(x); m <- mean(x)
  tt <- if (s > 0) t.test(x, conf.level = level)
  a <- (1 - level) / 2
  k <- qbinom(a, n, 0.5)
  sorted <- sort(x)
  walsh <- outer(x, x, "+") / 2
  walsh <- sort(walsh[!lower.tri(walsh)])
  q <- qsignrank(a, n)
  w <- suppressWarnings(wilcox.test(x, conf.int = TRUE, conf.level = level, exact = TRUE))
  if (!anyDuplicated(abs(x)) && all(x != 0) && n < 200)   # wilcox.test is exact only then
    stopifnot(all.equal(as.numeric(w$conf.int), c(walsh[q], walsh[length(walsh) + 1 - q])),
              all.equal(as.numeric(w$estimate), median(walsh)))
  inner <- qt(a, n - 1, 1.96 * sqrt(n)) * s / sqrt(n)
  outer_ <- qt(1 - a, n - 1, 1.96 * sqrt(n)) * s / sqrt(n)
  rows[[length(rows) + 1]] <- data.frame(
    sample = name, level = level, mean = m, sd = s, mean_lower = tt$conf.int[1], mean_upper = tt$conf.int[2],
    skewness = n / ((n - 1) * (n - 2)) * sum(((x - m) / s)^3),
    t = tt$statistic, p = tt$p.value,
    median = median(x), median_rank = k, median_lower = sorted[k], median_upper = sorted[n + 1 - k],
    median_level = 1 - 2 * pbinom(k - 1, n, 0.5),
    hl = median(walsh), hl_rank = q, hl_lower = walsh[q], hl_upper = walsh[length(walsh) + 1 - q],
    hl_level = 1 - 2 * psignrank(q - 1, n),
    loa_upper_exact_lower = m + inner, loa_upper_exact_upper = m + outer_,
    loa_lower_exact_lower = m - outer_, loa_lower_exact_upper = m - inner)
}
write_table("sample_results.csv", do.call(rbind, rows))

# Ranks of the two order intervals; qsignrank is exact, also at 1001
grid <- expand.grid(n = c(1:30, 50, 100, 300, 1000, 1001), level = c(0.8, 0.9, 0.95, 0.99))
grid <- grid[grid$n < 1000 | grid$level == 0.95, ]
grid$median_rank <- qbinom((1 - grid$level) / 2, grid$n, 0.5)
grid$hl_rank <- mapply(function(n, l) qsignrank((1 - l) / 2, n), grid$n, grid$level)
grid$hl_level <- mapply(function(n, q) 1 - 2 * psignrank(q - 1, n), grid$n, grid$hl_rank)
write_table("interval_ranks.csv", grid)
