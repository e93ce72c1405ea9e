# Reference values for the change on either side of a level, in base R only. Run in tests/ReferenceData: Rscript scripts/level_step.R
# Route differs from the program's: lm() with a constant for each cluster and predict() at the mean of the clusters' dummy variables, instead of values centered within clusters.
pairs <- read.csv("computed/regression_pairs.csv", comment.char = "#")
num <- function(v) trimws(formatC(v, digits = 17, format = "g"))
cases <- list(list("wide", 35, 8), list("wide", 35, 1), list("narrow", 11.5, 5), list("tied", 1.6, 10), list("tied", 1.6, 1))
rows <- do.call(rbind, lapply(cases, function(item) {
  own <- pairs[pairs$case == item[[1]], ]
  level <- item[[2]]
  size <- item[[3]]
  L <- 50 * log(own$x * own$y)
  D <- 100 * log(own$y / own$x)
  step <- as.numeric(own$x >= level)
  cluster <- (seq_along(L) - 1) %/% size
  X <- if (size == 1) cbind(1, L, step) else cbind(model.matrix(~ factor(cluster) - 1), L, step)
  fit <- lm(D ~ X - 1)
  means <- colMeans(X)
  side <- function(indicator) {
    at <- means
    at["L"] <- 100 * log(level)
    at["step"] <- indicator
    away <- at - means
    c(sum(coef(fit) * at) - mean(D), sqrt(drop(t(away) %*% vcov(fit) %*% away)))
  }
  below <- side(0)
  above <- side(1)
  data.frame(case = item[[1]], level = level, size = size, below = num(below[1]), below_se = num(below[2]), above = num(above[1]), above_se = num(above[2]), df = fit$df.residual)
}))
con <- file("computed/level_step.csv", "w")
writeLines(sprintf("# %s; scripts/level_step.R", R.version.string), con)
write.csv(rows, con, row.names = FALSE, quote = FALSE)
close(con)
