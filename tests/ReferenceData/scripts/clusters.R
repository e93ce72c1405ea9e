# Reference values for what collection days have in common and for lines with whole days left out, in base R only (values kept from R 4.2.2).
# Run in tests/ReferenceData: Rscript scripts/clusters.R. Reads computed/regression_pairs.csv; the cluster of pair i is i mod 5, of case "small" i mod 3.
# Routes differ from the program's: variance components from anova(lm()), the line from the eigenvector, the jackknife from the leave-out spread.
level <- 0.90
lambda <- 0.5
num <- function(v) trimws(formatC(v, digits = 17, format = "g"))
pairs <- read.csv("computed/regression_pairs.csv")
deming <- function(x, y, w = rep(1, length(x))) {
  mx <- sum(w * x) / sum(w); my <- sum(w * y) / sum(w)
  u <- (x - mx) / sqrt(lambda); v <- y - my
  e <- eigen(matrix(c(sum(w * u * u), sum(w * u * v), sum(w * u * v), sum(w * v * v)), 2), symmetric = TRUE)$vectors[, 1]
  b <- e[2] / e[1] / sqrt(lambda)
  c(a = my - b * mx, b = b)
}
weighted <- function(x, y) {
  level <- (x + lambda * y) / (1 + lambda)
  for (k in 1:200) {
    f <- deming(x, y, 1 / level^2)
    d <- y - f["a"] - f["b"] * x
    q <- 1 + lambda * f["b"]^2
    level <- unname(((x + lambda * f["b"] * d / q) + lambda * (y - d / q)) / (1 + lambda))
  }
  f
}
half <- function(leave, df) { D <- length(leave); qt((1 + level) / 2, df) * sqrt((D - 1) / D * sum((leave - mean(leave))^2)) }
out <- NULL
add <- function(case, names, values) out <<- rbind(out, data.frame(case = case, quantity = names, value = num(values)))
for (case in unique(pairs$case)) {
  x <- pairs$x[pairs$case == case]; y <- pairs$y[pairs$case == case]; n <- length(x)
  day <- seq_len(n) %% (if (case == "small") 3 else 5)
  change <- 100 * (y - x) / x
  a <- anova(lm(change ~ factor(day)))
  m <- table(day)
  shared <- max(0, (a[1, "Mean Sq"] - a[2, "Mean Sq"]) / ((n - sum(m^2) / n) / (length(m) - 1)))
  add(case, c("between", "within", "ratio", "p", "shared", "error"),
      c(a[1, "Mean Sq"], a[2, "Mean Sq"], a[1, "F value"], a[1, "Pr(>F)"], sqrt(shared), sqrt(shared * sum((m / n)^2))))
  at <- round(mean(x))
  add(case, "level", at)
  for (kind in c("constant", "weighted")) {
    bias <- function(keep) { f <- (if (kind == "constant") deming else weighted)(x[keep], y[keep]); f[["a"]] + (f[["b"]] - 1) * at }
    all <- bias(rep(TRUE, n))
    pair <- half(sapply(seq_len(n), function(i) bias(seq_len(n) != i)), n - 2)
    days <- half(sapply(unique(day), function(d) bias(day != d)), length(m) - 1)
    add(case, paste0(kind, c("_bias", "_half", "_by_days")), c(all, max(pair, days), as.numeric(days > pair)))
  }
}
con <- file("computed/clusters.csv", "w")
writeLines(sprintf("# %s; scripts/clusters.R", R.version.string), con)
write.csv(out, con, row.names = FALSE, quote = FALSE)
close(con)
