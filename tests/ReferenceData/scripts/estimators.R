# Theil–Sen, concordance, signed ranks and score intervals.
# Run from tests/ReferenceData:  Rscript scripts/estimators.R
# Base R only; reads computed/regression_pairs.csv, writes into computed/. Numbers are printed with 17 significant digits.
write_table <- function(name, table) {
  path <- file.path("computed", name)
  text <- as.data.frame(lapply(table, function(column) if (is.numeric(column)) sprintf("%.17g", column) else column))
  writeLines(paste0("# ", R.version.string, "; scripts/estimators.R"), path)
  suppressWarnings(write.table(text, path, append = TRUE, sep = ",", quote = FALSE, row.names = FALSE))
}
pairs <- read.csv("computed/regression_pairs.csv", comment.char = "#")
names(pairs) <- c("case", "x", "y")
cases <- unique(pairs$case)
by_case <- function(f) do.call(rbind, lapply(cases, function(name) f(name, subset(pairs, case == name)$x, subset(pairs, case == name)$y)))

# Whole hundredths of the unit, so that equal x are equal and slopes are rounded once.
whole <- function(v) round(v * 1e4)
write_table("theil_sen.csv", by_case(function(name, x, y) {
  dx <- outer(whole(x), whole(x), "-"); dy <- outer(whole(y), whole(y), "-")
  slopes <- sort((dy / dx)[lower.tri(dx) & dx != 0])
  n <- length(x); u <- table(whole(x)); term <- function(m) m * (m - 1) * (2 * m + 5)
  margin <- qnorm(0.975) * sqrt((term(n) - sum(term(u))) / 18)
  rank <- floor((length(slopes) - margin) / 2 + 0.5)
  data.frame(case = name, slopes = length(slopes), slope = median(slopes), lower = slopes[rank], upper = rev(slopes)[rank],
    intercept = median(y - median(slopes) * x))
}))

# The variance in the printed form of 2000, with r in the denominators.
write_table("concordance.csv", by_case(function(name, x, y) {
  n <- length(x); m <- function(a, b) mean((a - mean(a)) * (b - mean(b)))
  p <- 2 * m(x, y) / (m(x, x) + m(y, y) + (mean(x) - mean(y))^2); r <- cor(x, y)
  u <- (mean(x) - mean(y)) / (m(x, x) * m(y, y))^0.25
  se <- sqrt(((1 - r^2) * p^2 * (1 - p^2) / r^2 + 2 * p^3 * (1 - p) * u^2 / r - p^4 * u^4 / (2 * r^2)) / (n - 2))
  z <- atanh(p) + c(-1, 1) * qnorm(0.975) * se / (1 - p^2)
  data.frame(case = name, ccc = p, accuracy = p / r, se = se, lower = tanh(z[1]), upper = tanh(z[2]))
}))

# Every pattern of signs, with ties and zeros; without ties wilcox.test must agree.
samples <- list(plain = c(3, -1, 4, 5, -2, 8), zeros = c(0, 1, 2, 2, -3, 0, 4, 4, 4, -1), heavy = c(1, 1, 1, -1, 1, 2, 2, -2, 1, 1, 3), even = c(1, -1, 2, -2),
  one = 7, long = c(-3, 5, 5, 6, -1, 2, 8, 9, -4, 4, 7, 7, 1, 12))
write_table("signed_rank.csv", do.call(rbind, lapply(names(samples), function(name) {
  d <- samples[[name]]; nonzero <- d[d != 0]; n <- length(nonzero); r <- rank(abs(nonzero))
  v <- sum(r[nonzero > 0])
  all <- as.matrix(expand.grid(rep(list(0:1), n))) %*% r
  exact <- min(1, 2 * min(mean(all <= v), mean(all >= v)))
  if (!any(duplicated(abs(nonzero)))) stopifnot(abs(exact - wilcox.test(nonzero, exact = TRUE)$p.value) < 1e-14)
  data.frame(case = name, values = paste(d, collapse = " "), v = v, p = exact, normal = suppressWarnings(wilcox.test(d, exact = FALSE, correct = TRUE)$p.value))
})))

grid <- expand.grid(trials = c(1, 5, 20, 40, 181), part = c(0, 0.1, 0.5, 0.95, 1), level = c(0.9, 0.95, 0.99))
grid$successes <- floor(grid$trials * grid$part)
bounds <- mapply(function(k, n, level) suppressWarnings(prop.test(k, n, conf.level = level, correct = FALSE)$conf.int), grid$successes, grid$trials, grid$level)
grid$lower <- bounds[1, ]; grid$upper <- bounds[2, ]
write_table("wilson.csv", grid)

set.seed(20240818)
samples <- lapply(c(3, 3, 4, 5, 6, 7, 11, 12, 25, 60), function(n) round(rnorm(n), 6))
samples <- c(samples, list(c(1, 2, 10), round(rexp(11), 3), round(rexp(40), 2), round(rnorm(30, 30, 2), 1)))
write_table("shapiro_wilk.csv", do.call(rbind, lapply(samples, function(v) { test <- shapiro.test(v)
  data.frame(n = length(v), values = paste(format(v, trim = TRUE), collapse = " "), w = unname(test$statistic), p = test$p.value) })))

write_table("weighted_least_squares.csv", by_case(function(name, x, y) { fit <- lm(y ~ x, weights = 1 / x^2)
  s <- summary(fit)$coefficients; ci <- confint(fit)
  data.frame(case = name, intercept = s[1, 1], intercept_se = s[1, 2], intercept_lower = ci[1, 1], intercept_upper = ci[1, 2],
    slope = s[2, 1], slope_se = s[2, 2], slope_lower = ci[2, 1], slope_upper = ci[2, 2], residual = summary(fit)$sigma) }))
