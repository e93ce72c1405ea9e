# Reference values for regression, correlation, drift and outlier search, in base R only (values kept from R 4.2.2).
# Run in tests/ReferenceData: Rscript scripts/regression_reference.R
# Routes differ from the program's on purpose: Deming from the leading eigenvector of the scaled covariance matrix, jackknife from
# the spread of the leave-one-out estimates, tau-b's standard error from the contingency table, least squares from lm(), crossing by root finding.
RNGkind("Mersenne-Twister", "Inversion", "Rejection")
level <- 0.95
num <- function(v) trimws(formatC(v, digits = 17, format = "g"))

# Pairs -----------------------------------------------------------------------------------------------------------------
set.seed(20240611)
truth <- exp(rnorm(40, log(32), 0.35))
wide <- data.frame(case = "wide", x = round(truth * (1 + rnorm(40, 0, 0.03)), 1), y = round(0.8 + 1.03 * truth * (1 + rnorm(40, 0, 0.04)), 1))
truth <- runif(25, 9, 14)
narrow <- data.frame(case = "narrow", x = round(truth + rnorm(25, 0, 0.4), 2), y = round(truth + 0.3 + rnorm(25, 0, 0.6), 2))
truth <- pmax(0.9, rnorm(30, 1.6, 0.5))
tied <- data.frame(case = "tied", x = round(truth + rnorm(30, 0, 0.05), 1), y = round(1.05 * truth + rnorm(30, 0, 0.08), 1))
small <- data.frame(case = "small", x = c(11.2, 12.9, 14.1, 18.6, 22.3, 30.7), y = c(11.5, 12.7, 14.9, 18.4, 23.6, 31.9))
pairs <- rbind(wide, narrow, tied, small)
write.csv(pairs, "computed/regression_pairs.csv", row.names = FALSE, quote = FALSE)

deming <- function(x, y, lambda, w = rep(1, length(x))) {
  mx <- sum(w * x) / sum(w); my <- sum(w * y) / sum(w)
  u <- (x - mx) / sqrt(lambda); v <- y - my
  e <- eigen(matrix(c(sum(w * u * u), sum(w * u * v), sum(w * u * v), sum(w * v * v)), 2), symmetric = TRUE)$vectors[, 1]
  b <- e[2] / e[1] / sqrt(lambda)
  c(a = my - b * mx, b = b)
}
wdeming <- function(x, y, lambda) {
  level <- (x + lambda * y) / (1 + lambda)
  for (k in 1:200) {
    f <- deming(x, y, lambda, 1 / level^2)
    d <- y - f["a"] - f["b"] * x
    q <- 1 + lambda * f["b"]^2
    level <- unname(((x + lambda * f["b"] * d / q) + lambda * (y - d / q)) / (1 + lambda))
  }
  f
}
jack <- function(x, y, fit, quantity) {
  n <- length(x)
  leave <- sapply(seq_len(n), function(i) quantity(fit(x[-i], y[-i])))
  est <- quantity(fit(x, y))
  se <- sqrt((n - 1) / n * sum((leave - mean(leave))^2))
  half <- qt((1 + level) / 2, n - 2) * se
  c(est, se, est - half, est + half)
}
taub <- function(x, y) {
  t <- table(x, y); n <- sum(t); R <- nrow(t); C <- ncol(t)
  P <- 0; Q <- 0; A <- D <- matrix(0, R, C)
  for (i in 1:R) for (j in 1:C) for (k in 1:R) for (l in 1:C) {
    if ((i - k) * (j - l) > 0) A[i, j] <- A[i, j] + t[k, l]
    if ((i - k) * (j - l) < 0) D[i, j] <- D[i, j] + t[k, l]
  }
  P <- sum(t * A); Q <- sum(t * D)
  wr <- n^2 - sum(rowSums(t)^2); wc <- n^2 - sum(colSums(t)^2); w <- sqrt(wr * wc)
  tau <- (P - Q) / w
  stopifnot(isTRUE(all.equal(tau, cor(x, y, method = "kendall"))))
  v <- outer(rowSums(t) * wc, colSums(t) * wr, "+")
  se <- sqrt((sum(t * (2 * w * (A - D) + tau * v)^2) - n^3 * tau^2 * (wr + wc)^2) / w^4)
  c(tau, se)
}
pb <- function(x, y, scale) {
  X <- round(x * scale); Y <- round(y * scale); n <- length(X)
  g <- which(upper.tri(diag(n)), arr.ind = TRUE)
  dx <- X[g[, 2]] - X[g[, 1]]; dy <- Y[g[, 2]] - Y[g[, 1]]
  keep <- !(dx == 0 & dy == 0) & dy != -dx
  s <- sort(ifelse(dx[keep] == 0, Inf, dy[keep] / dx[keep]))
  N <- length(s); K <- sum(s < -1)
  b <- if (N %% 2 == 1) s[(N + 1) / 2 + K] else mean(s[N / 2 + K + 0:1])
  cc <- qnorm((1 + level) / 2) * sqrt(n * (n - 1) * (2 * n + 5) / 18)
  M1 <- floor((N - cc) / 2 + 0.5); M2 <- N - M1 + 1
  bl <- s[M1 + K]; bu <- s[M2 + K]
  a <- median(y - b * x)
  e <- y - a - b * x; side <- ifelse(abs(e) < 1e-9, 0, sign(e))
  up <- sum(side > 0); dn <- sum(side < 0)
  r <- ifelse(side > 0, sqrt(dn / up), ifelse(side < 0, -sqrt(up / dn), 0))
  place <- round(x + b * y, 9)
  cus <- cumsum(tapply(r, place, sum)[order(as.numeric(names(tapply(r, place, sum))))])
  c(N, K, b, bl, bu, a, median(y - bu * x), median(y - bl * x), max(abs(cus)) / sqrt(dn + 1), up, dn)
}

out <- NULL
add <- function(case, names, values) out <<- rbind(out, data.frame(case = case, quantity = names, value = num(values)))
four <- function(p) paste0(p, c("", "_se", "_lower", "_upper"))
for (case in unique(pairs$case)) {
  x <- pairs$x[pairs$case == case]; y <- pairs$y[pairs$case == case]; n <- length(x)
  m <- lm(y ~ x); s <- summary(m); ci <- confint(m, level = level)
  add(case, four("ols_intercept"), c(s$coefficients[1, 1:2], ci[1, ]))
  add(case, four("ols_slope"), c(s$coefficients[2, 1:2], ci[2, ]))
  add(case, "ols_residual", s$sigma)
  at <- round(mean(x))
  add(case, "level", at)
  for (lambda in c(1, 0.5)) {
    for (kind in c("deming", "weighted")) {
      fit <- function(x, y) if (kind == "deming") deming(x, y, lambda) else wdeming(x, y, lambda)
      p <- paste0(kind, "_", lambda)
      add(case, four(paste0(p, "_intercept")), jack(x, y, fit, function(f) f[["a"]]))
      add(case, four(paste0(p, "_slope")), jack(x, y, fit, function(f) f[["b"]]))
      add(case, four(paste0(p, "_bias")), jack(x, y, fit, function(f) f[["a"]] + (f[["b"]] - 1) * at))
      f <- fit(x, y); d <- y - f["a"] - f["b"] * x; q <- 1 + lambda * f["b"]^2
      w <- if (kind == "deming") 1 else 1 / (((x + lambda * f["b"] * d / q) + lambda * (y - d / q)) / (1 + lambda))^2
      add(case, paste0(p, "_residual"), sqrt(sum(w * d^2) / (n - 2)))
    }
  }
  t <- taub(x, y); h <- qnorm((1 + level) / 2) * t[2]
  add(case, four("kendall"), c(t, max(-1, t[1] - h), min(1, t[1] + h)))
  r <- cor.test(x, y, conf.level = level)
  add(case, c("pearson", "pearson_lower", "pearson_upper"), c(r$estimate, r$conf.int))
  add(case, c("pb_n", "pb_k", "pb_slope", "pb_slope_lower", "pb_slope_upper", "pb_intercept", "pb_intercept_lower", "pb_intercept_upper",
              "cusum", "cusum_above", "cusum_below"), pb(x, y, 100))
}
write.csv(out, "computed/regression_expected.csv", row.names = FALSE, quote = FALSE)

# Drift -----------------------------------------------------------------------------------------------------------------
set.seed(7)
series <- NULL
for (i in 1:12) {
  t0 <- round(runif(1, 0.5, 2.5), 2)
  t <- round(c(4, 8, 24, 48) + rnorm(4, 0, 0.4), 2)
  series <- rbind(series, data.frame(specimen = i, cluster = (i - 1) %/% 3, baseline = t0, delay = t,
                                     change = round(0.11 * (t - t0) + rnorm(1, 0, 0.03) * (t - t0) + rnorm(4, 0, 1.2), 3)))
}
series <- series[-c(7, 22, 23), ]
write.csv(series, "computed/drift_series.csv", row.names = FALSE, quote = FALSE)
shapes <- list(Linear = function(t) t, Logarithmic = function(t) log(1 + t), Quadratic = function(t) t^2)
out <- NULL
for (shape in names(shapes)) {
  f <- shapes[[shape]]
  ids <- unique(series$specimen)
  b <- sapply(ids, function(i) { d <- series[series$specimen == i, ]; coef(lm(change ~ 0 + I(f(delay) - f(baseline)), d)) })
  cl <- sapply(ids, function(i) series$cluster[series$specimen == i][1])
  t0 <- mean(sapply(ids, function(i) series$baseline[series$specimen == i][1]))
  add(shape, paste0("slope_", ids), b)
  bySpecimen <- t.test(b, conf.level = 0.90)$conf.int; byCluster <- t.test(tapply(b, cl, mean), conf.level = 0.90)$conf.int
  # Each half lengthened for skewness by Hall's transformation g(t) = t + g t²/3 + g² t³/27 + g/(6n), solved numerically.
  n <- length(b); g <- n / ((n - 1) * (n - 2)) * sum(((b - mean(b)) / sd(b))^3); q <- qt(0.95, n - 1)
  inverse <- function(x) uniroot(function(t) t + g * t^2 / 3 + g^2 * t^3 / 27 + g / (6 * n) - x, c(-20, 20), tol = 1e-15, maxiter = 10000)$root
  down <- max(1, sqrt(n) * inverse(q / sqrt(n)) / q); more <- max(1, -sqrt(n) * inverse(-q / sqrt(n)) / q)
  days <- mean(tapply(b, cl, mean))
  lo <- min(mean(b) - down * (mean(b) - bySpecimen[1]), days - down * (days - byCluster[1]))
  up <- max(mean(b) + more * (bySpecimen[2] - mean(b)), days + more * (byCluster[2] - days))
  cross <- function(limit) uniroot(function(t) max(up, -lo) * (f(t) - f(t0)) - limit, c(t0, 1e6), tol = 1e-13, maxiter = 10000)$root
  add(shape, c("mean", "lower", "upper", "baseline", "change_24", "lower_24", "upper_24", "crossing_5"),
      c(mean(b), lo, up, t0, mean(b) * (f(24) - f(t0)), lo * (f(24) - f(t0)), up * (f(24) - f(t0)), cross(5)))
}
write.csv(out, "computed/drift_expected.csv", row.names = FALSE, quote = FALSE)

# Generalized ESD on Rosner's data, in full digits -------------------------------------------------------------------
v <- read.csv("published/rosner1983_esd.csv")$y; n <- length(v); left <- v; out <- NULL
for (i in 1:10) {
  z <- abs(left - mean(left)) / sd(left); k <- which.max(z); t <- qt(1 - 0.05 / (2 * (n - i + 1)), n - i - 1)
  add(i, c("value", "statistic", "critical"), c(left[k], z[k], (n - i) * t / sqrt((n - i - 1 + t^2) * (n - i + 1))))
  left <- left[-k]
}
write.csv(out, "computed/outliers_rosner_expected.csv", row.names = FALSE, quote = FALSE)
