# Reference values for the drift by a mixed model, with nlme (values kept from R 4.2.2, nlme 3.1-162). Run in tests/ReferenceData: Rscript scripts/random_slope.R
# growth: the data set Orthodont of nlme (Potthoff RF, Roy SN. Biometrika 1964;51:313-326). The others are made here with a fixed seed.
library(nlme)
num <- function(v) trimws(formatC(v, digits = 17, format = "g"))
set.seed(20261126)
made <- function(m, hours, s0, s1, rho, se, keep) {
  rows <- NULL
  for (i in 1:m) {
    z <- rnorm(2)
    a <- s0 * z[1]; b <- s1 * (rho * z[1] + sqrt(1 - rho^2) * z[2])
    t <- hours + runif(length(hours), -0.2, 0.3)
    use <- c(TRUE, runif(length(t) - 1) < keep)
    rows <- rbind(rows, data.frame(id = i, g = log1p(t[use]), y = 340 + a + (2 + b) * log1p(t[use]) + se * rnorm(sum(use))))
  }
  rows$g <- round(rows$g, 6); rows$y <- round(rows$y, 3)
  rows
}
cases <- list(
  growth = with(Orthodont, data.frame(id = as.integer(Subject), g = age, y = distance)),
  complete = local({ d <- made(10, c(1, 6, 8, 12), 20, 1, 0.3, 1.5, 1); d$g <- rep(round(log1p(c(1, 6, 8, 12)), 6), 10); d }),
  jittered = made(24, c(1, 6, 8, 12), 15, 1.2, -0.4, 2, 0.75),
  long = made(8, c(1, 4, 8, 12, 24, 48, 72), 25, 2, 0, 1, 0.9)
)
data <- NULL; out <- NULL
for (case in names(cases)) {
  d <- cases[[case]]
  data <- rbind(data, data.frame(case = case, id = d$id, g = num(d$g), y = num(d$y)))
  control <- lmeControl(msTol = 1e-12, tolerance = 1e-12, msMaxIter = 1000, maxIter = 1000, niterEM = 200, opt = "optim")
  fit <- lme(y ~ g, random = ~ g | id, data = d, method = "REML", control = control)
  full <- lme(y ~ g, random = ~ g | id, data = d, method = "ML", control = control)
  v <- getVarCov(fit); k <- 6; n <- nrow(d)
  aicc <- as.numeric(-2 * logLik(full)) + 2 * k + 2 * k * (k + 1) / (n - k - 1)
  out <- rbind(out, data.frame(case = case,
    quantity = c("intercept", "slope", "slope_se", "var_intercept", "var_slope", "covariance", "var_residual", "loglik", "aicc"),
    value = num(c(fixef(fit), sqrt(vcov(fit)[2, 2]), v[1, 1], v[2, 2], v[1, 2], fit$sigma^2, as.numeric(logLik(fit)), aicc))))
}
write_with <- function(frame, name) {
  file <- file.path("computed", name)
  cat("# R 4.2.2, nlme 3.1-162, scripts/random_slope.R\n", file = file)
  suppressWarnings(write.table(frame, file, append = TRUE, sep = ",", row.names = FALSE, quote = FALSE))
}
write_with(data, "random_slope_results.csv")
write_with(out, "random_slope_expected.csv")
