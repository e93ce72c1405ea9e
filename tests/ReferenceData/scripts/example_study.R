# The main figures of the example study, from its raw CSV files and by rules written out by hand; shares nothing with the program.
# Run from tests/ReferenceData:  Rscript scripts/example_study.R
# Base R only; writes computed/example_study.csv. Numbers are printed with 17 significant digits.
folder <- "../../example-studies/aptt-room-temperature"
read_rows <- function(name) read.csv(file.path(folder, name), colClasses = "character", na.strings = character(0))
instant <- function(text) as.POSIXct(sub("(..):(..)$", "\\1\\2", text), format = "%Y-%m-%dT%H:%M:%S%z", tz = "UTC")
minutes <- function(from, to) as.numeric(difftime(instant(to), instant(from), units = "mins"))

tubes <- read_rows("specimens.csv")
results <- read_rows("results.csv")
stopifnot(!anyDuplicated(tubes$tube), all(results$replicate == "1"), all(results$unit == "s"),
          !anyDuplicated(results[, c("specimen", "time_point")]),
          all(grepl("^[0-9]+\\.[0-9]$", results$result) | (results$result == "" & results$flag == "clot")),
          all(tubes$hemolysis %in% c("none", "slight")))   # none is hemolyzed enough to fail
# Tenths of a second, so that limits are compared in whole numbers.
results$tenths <- as.numeric(sub(".", "", results$result, fixed = TRUE))
stopifnot(all(results$tenths >= 200 & results$tenths <= 1800, na.rm = TRUE))   # none is beyond the measuring interval
rows <- merge(results, tubes, by = c("specimen", "tube"))
stopifnot(nrow(rows) == nrow(results))
rows$delay <- minutes(rows$collected_at, rows$tested_at)
rows$spun_after <- minutes(rows$collected_at, rows$spun_at)
rows$spin_to_test <- minutes(rows$spun_at, rows$tested_at)
rows$fit <- (rows$fill_percent == "" | as.numeric(rows$fill_percent) >= 90) &
  (rows$hematocrit_percent == "" | as.numeric(rows$hematocrit_percent) <= 55)

baseline <- rows[rows$time_point == "baseline", ]
stopifnot(!anyDuplicated(baseline$subject[baseline$group == "none"]), !anyDuplicated(baseline$subject[baseline$group == "ufh"]))
baseline$valid <- baseline$fit & baseline$clot == "no" & baseline$delay >= 0 & baseline$delay <= 30 &
  (baseline$group != "ufh" | baseline$spun_after <= 60)

# The hull of the intervals over specimens, days, runs of either side and, where runs cross, both together, each half lengthened for skewness
# (Hall's transformation with the quantile of t); written out from the formulas.
hull <- function(p, day, before, after, level = 0.90) {
  n <- length(p); m <- mean(p); s <- sd(p); a <- (1 + level) / 2
  g <- n / ((n - 1) * (n - 2)) * sum((p - m)^3) / s^3
  inv <- function(x) 3 / g * (sign(1 + g * (x - g / (6 * n))) * abs(1 + g * (x - g / (6 * n)))^(1 / 3) - 1)
  q <- qt(a, n - 1)
  up <- max(1, -sqrt(n) * inv(-q / sqrt(n)) / q); down <- max(1, sqrt(n) * inv(q / sqrt(n)) / q)
  centers <- m; halves <- q * s / sqrt(n)
  error <- function(by) { means <- tapply(p, by, mean); sd(means) / sqrt(length(means)) }
  for (by in list(day, before, after)) {
    k <- length(unique(by)); means <- as.numeric(tapply(p, by, mean))
    if (k > 1 && k < n) { centers <- c(centers, mean(means)); halves <- c(halves, qt(a, k - 1) * sd(means) / sqrt(k)) }
  }
  both <- paste(before, after); k <- c(length(unique(before)), length(unique(after)))
  if (length(unique(both)) > max(k)) {
    v <- error(before)^2 + error(after)^2 - error(both)^2
    if (v > 0) { centers <- c(centers, m); halves <- c(halves, qt(a, min(k) - 1) * sqrt(v)) }
  }
  c(min(centers - down * halves), max(centers + up * halves))
}

# Bridging plasma: mean reading of each run.
controls <- read_rows("controls.csv")
bridging <- controls[controls$kind == "bridging plasma", ]
reading <- tapply(as.numeric(bridging$result), bridging$run, mean)

# The one documented exclusion of study.toml.
excluded <- function(d) d$specimen == "N-017" & d$time_point == "6 h"

lines <- list()
pairs_of <- list()
for (group in c("none", "ufh")) for (hours in if (group == "ufh") c(2, 4, 6) else c(6, 8, 12)) {
  delayed <- rows[rows$group == group & rows$time_point == paste(hours, "h"), ]
  first <- baseline[match(delayed$specimen, baseline$specimen), ]
  usable <- delayed$fit & first$valid
  # A clot found only after waiting fails the delayed tube, whatever its times.
  failed <- usable & (delayed$clot == "yes" | delayed$flag == "clot")
  timely <- delayed$delay >= hours * 60 & delayed$delay <= hours * 60 + 30 & delayed$spin_to_test >= 0 & delayed$spin_to_test <= 60
  compared <- usable & !failed & timely & !excluded(delayed)

  x <- first$tenths[compared]; y <- delayed$tenths[compared]
  percent <- 100 * (y - x) / x
  seconds <- (y - x) / 10
  day_means <- as.numeric(tapply(percent, substr(delayed$collected_at[compared], 1, 10), mean))
  by_specimen <- t.test(percent, conf.level = 0.90)$conf.int
  by_day <- t.test(day_means, conf.level = 0.90)$conf.int
  day <- substr(delayed$collected_at[compared], 1, 10)
  before <- first$run[compared]; after <- delayed$run[compared]
  measured <- hull(percent, day, before, after)
  corrected <- 100 * (y / (reading[after] / reading[before]) - x) / x
  bridged <- hull(as.numeric(corrected), day, before, after)
  # Within 15 % of the baseline or 2.0 s, whichever is greater; a failed tube is outside.
  inside <- sum(100 * abs(y - x) <= pmax(15 * x, 100 * 20))
  counted <- length(x) + sum(failed)
  walsh <- outer(percent, percent, "+") / 2
  a <- x / 10; b <- y / 10; n <- length(a)
  slopes <- outer(b, b, "-") / outer(a, a, "-")
  level <- lm(100 * log(b / a) ~ log2(sqrt(a * b)))
  concordance <- 2 * mean((a - mean(a)) * (b - mean(b))) /
    (mean((a - mean(a))^2) + mean((b - mean(b))^2) + (mean(a) - mean(b))^2)
  pairs_of[[paste(group, hours)]] <- data.frame(group = group, id = delayed$specimen[compared],
    g0 = log1p(first$delay[compared] / 60), y0 = 100 * log(a), g = log1p(delayed$delay[compared] / 60), y = 100 * log(b))
  lines[[length(lines) + 1]] <- data.frame(
    group = group, time_point = paste(hours, "h"), compared = length(x), days = length(day_means),
    failed = sum(failed), inside = inside, counted = counted,
    mean_percent = mean(percent), sd_percent = sd(percent),
    by_specimen_lower = by_specimen[1], by_specimen_upper = by_specimen[2],
    by_day_lower = by_day[1], by_day_upper = by_day[2],
    hull_lower = measured[1], hull_upper = measured[2],
    bridged_mean = mean(corrected), bridged_lower = bridged[1], bridged_upper = bridged[2],
    share_lower = binom.test(inside, counted, alternative = "greater", conf.level = 0.95)$conf.int[1],
    share_upper = binom.test(inside, counted, alternative = "less", conf.level = 0.95)$conf.int[2],
    hodges_lehmann_percent = median(walsh[!lower.tri(walsh)]), median_percent = median(percent),
    agreement_percent_lower = mean(percent) - 1.96 * sd(percent), agreement_percent_upper = mean(percent) + 1.96 * sd(percent),
    percentile_lower = quantile(percent, 0.025, type = 8, names = FALSE), percentile_upper = quantile(percent, 0.975, type = 8, names = FALSE),
    shapiro_w = unname(shapiro.test(percent)$statistic),
    weighted_slope = unname(coef(lm(b ~ a, weights = 1 / a^2))[2]),
    theil_sen = median(slopes[upper.tri(slopes) & is.finite(slopes)]),
    tau_b = cor(a, b, method = "kendall"), concordance = concordance,
    level_slope = unname(coef(level)[2]), level_lower = confint(level)[2, 1], level_upper = confint(level)[2, 2],
    mean_seconds = mean(seconds),
    agreement_seconds_lower = mean(seconds) - 1.96 * sd(seconds), agreement_seconds_upper = mean(seconds) + 1.96 * sd(seconds))
}
table <- do.call(rbind, lines)
text <- as.data.frame(lapply(table, function(column) if (is.numeric(column)) sprintf("%.17g", column) else column))
path <- "computed/example_study.csv"
writeLines(paste0("# ", R.version.string, "; scripts/example_study.R"), path)
suppressWarnings(write.table(text, path, append = TRUE, sep = ",", quote = FALSE, row.names = FALSE))

# The drift of each group by a mixed model on logarithms, baselines included.
library(nlme)
drift <- do.call(rbind, lapply(c("none", "ufh"), function(group) {
  pairs <- do.call(rbind, pairs_of[grepl(group, names(pairs_of))])
  own <- pairs[!duplicated(pairs$id), ]
  d <- data.frame(id = c(own$id, pairs$id), g = c(own$g0, pairs$g), y = c(own$y0, pairs$y))
  control <- lmeControl(msMaxIter = 1000, maxIter = 1000, niterEM = 500, returnObject = TRUE)
  fit <- lme(y ~ g, random = ~ g | id, data = d, method = "REML", control = control)
  data.frame(group = group, results = nrow(d), slope = unname(fixef(fit)[2]), slope_se = sqrt(vcov(fit)[2, 2]), loglik = as.numeric(logLik(fit)))
}))
text <- as.data.frame(lapply(drift, function(column) if (is.numeric(column)) sprintf("%.17g", column) else column))
path <- "computed/example_drift.csv"
writeLines(paste0("# ", R.version.string, ", nlme ", packageVersion("nlme"), "; scripts/example_study.R"), path)
suppressWarnings(write.table(text, path, append = TRUE, sep = ",", quote = FALSE, row.names = FALSE))
