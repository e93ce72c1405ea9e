# Power of the paired equivalence criterion and of the individual criterion.
# Run from tests/ReferenceData:  Rscript scripts/planning.R
# Base R only; writes into computed/. Numbers are printed with 17 significant digits.
write_table <- function(name, table) {
  path <- file.path("computed", name)
  text <- as.data.frame(lapply(table, function(column) if (is.numeric(column)) sprintf("%.17g", column) else column))
  writeLines(paste0("# ", R.version.string, "; scripts/planning.R"), path)
  suppressWarnings(write.table(text, path, append = TRUE, sep = ",", quote = FALSE, row.names = FALSE))
}

# Integral over the standard deviation in units of its expectation, cut where the interval no longer fits.
equivalence <- function(n, change, sd, lower, upper, level) {
  se <- sd / sqrt(n); nu <- n - 1; t <- qt((1 + level) / 2, nu)
  quantiles <- sqrt(qchisq(c(1e-12, 1e-8, 1e-4, 1e-2, (1:19) / 20, 0.99, 1 - 1e-4, 1 - 1e-8), nu) / nu)
  cut <- min((upper - lower) / (2 * t * se), sqrt(qchisq(1e-18, nu, lower.tail = FALSE) / nu))
  f <- function(w) (pnorm((upper - change) / se - t * w) - pnorm((lower - change) / se + t * w)) *
    2 * sqrt(nu) * exp((nu - 1) * log(w * sqrt(nu)) - nu * w^2 / 2 - (nu / 2) * log(2) - lgamma(nu / 2))
  edges <- unique(sort(c(0, cut, pmin(cut, quantiles))))
  sum(mapply(function(a, b) integrate(f, a, b, rel.tol = 1e-11, abs.tol = 1e-15, subdivisions = 2000)$value, head(edges, -1), tail(edges, -1)))
}
grid <- expand.grid(n = c(2, 3, 5, 10, 20, 40, 150), change = c(0, 3, -5, 7.5, 9), sd = c(1, 3, 12), level = c(0.9, 0.95))
grid$lower <- -7.5; grid$upper <- 7.5
grid <- rbind(grid, data.frame(n = c(20, 40, 60, 20, 40, 60), change = c(3, 3, 3, -5, -5, -5), sd = c(5.1, 5.1, 5.1, 5, 5, 5), level = 0.9, lower = c(-7.5, -6, -9, -10, -10, -10), upper = 10))
grid$power <- mapply(equivalence, grid$n, grid$change, grid$sd, grid$lower, grid$upper, grid$level)
write_table("equivalence_power.csv", grid)

# The most failures by trying every number with binom.test.
individual <- function(n, true, required, level) {
  reached <- sapply(0:n, function(out) binom.test(n - out, n, alternative = "greater", conf.level = level)$conf.int[1] >= required)
  if (!any(reached)) 0 else pbinom(max(which(reached)) - 1, n, 1 - true)
}
grid <- expand.grid(n = c(5, 19, 20, 29, 40, 59, 80, 181), true = c(0.85, 0.9, 0.97, 0.98, 0.99, 1), required = c(0.85, 0.9, 0.95), level = c(0.9, 0.95))
grid$power <- mapply(individual, grid$n, grid$true, grid$required, grid$level)
write_table("individual_power.csv", grid)
