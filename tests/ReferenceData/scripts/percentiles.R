# Reference values for percentiles by type and for change against level (values kept from R 4.2.2). Run in tests/ReferenceData: Rscript scripts/percentiles.R
num <- function(v) trimws(formatC(v, digits = 17, format = "g"))
samples <- read.csv("computed/samples.csv", comment.char = "#")
pairs <- read.csv("computed/regression_pairs.csv", comment.char = "#")
out <- NULL
for (s in unique(samples$sample)) for (type in 6:8) for (p in c(0.05, 0.25, 0.5, 0.9, 0.95)) {
  v <- samples$value[samples$sample == s]
  out <- rbind(out, data.frame(sample = s, type = type, share = p, value = num(quantile(v, p, type = type, names = FALSE))))
}
level <- NULL
for (case in unique(pairs$case)) {
  x <- pairs$x[pairs$case == case]; y <- pairs$y[pairs$case == case]
  if (any(x <= 0 | y <= 0) || length(x) < 3) next
  fit <- lm(100 * log(y / x) ~ log2(sqrt(x * y))); ci <- confint(fit, level = 0.95)
  level <- rbind(level, data.frame(case = case, quantity = c("slope", "lower", "upper", "intercept"), value = num(c(coef(fit)[2], ci[2, ], coef(fit)[1]))))
}
write_with <- function(frame, name) {
  file <- file.path("computed", name)
  cat("# R 4.2.2, scripts/percentiles.R\n", file = file)
  suppressWarnings(write.table(frame, file, append = TRUE, sep = ",", row.names = FALSE, quote = FALSE))
}
write_with(out, "percentiles.csv"); write_with(level, "level_dependence.csv")
