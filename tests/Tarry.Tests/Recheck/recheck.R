# Recomputes the findings of a study from its exported trials, with limma for the moderated variances.
# Usage: Rscript recheck.R trials.csv reference sessions-kept-out-of-the-pool.txt out.csv
suppressPackageStartupMessages(library(limma))
args <- commandArgs(trailingOnly = TRUE)
trials <- read.csv(args[1], colClasses = c(condition = "character", sitting = "character"))
reference <- args[2]
out_of_pool <- readLines(args[3])
trials <- trials[trials$excluded == 0, ]
presses <- trials[trials$outcome %in% c("response", "missed"), ]
presses$ms <- ifelse(presses$outcome == "response", presses$latency_us / 1000, Inf)
used <- presses[is.finite(presses$ms), ]
rows <- list()
say <- function(condition, statistic, value) rows[[length(rows) + 1]] <<- data.frame(condition, statistic, value)

conditions <- unique(trials$condition)
sittings <- sort(unique(trials$sitting))
means <- tapply(used$ms, list(used$condition, used$sitting), mean)[conditions, sittings]
sds <- tapply(used$ms, list(used$condition, used$sitting), sd)[conditions, sittings]
kept <- outer(conditions, sittings, function(c, s) !(paste(s, c, sep = ".") %in% out_of_pool))
clean <- apply(kept, 1, all)

# Degrees of freedom of a variance pooled over conditions that share sittings: mean squares of the two-way layout, by anova.
shared_df <- function(values) {
  C <- nrow(values); J <- ncol(values)
  layout <- data.frame(y = as.vector(values), condition = factor(rep(seq_len(C), J)), sitting = factor(rep(seq_len(J), each = C)))
  ms <- anova(lm(y ~ condition + sitting, layout))[["Mean Sq"]]
  parts <- c(ms[2] / C, ms[3] * (1 - 1 / C))
  min(max(sum(parts)^2 / sum(parts^2 / c(J - 1, (C - 1) * (J - 1))), J - 1), C * (J - 1))
}

# Each condition's variance of session values: moderated over the clean ones and averaged with their mean, its own for the others.
moderate <- function(values) {
  variance <- apply(values, 1, var)
  df <- rep(ncol(values) - 1, nrow(values))
  squeezed <- squeezeVar(variance[clean], df = df[clean])
  posterior <- variance
  posterior[clean] <- (squeezed$var.post + mean(variance[clean])) / 2
  total <- df
  total[clean] <- pmax(pmin(squeezed$df.prior + df[clean], sum(df[clean]), shared_df(values[clean, ])), df[clean])
  list(variance = posterior, df = total)
}
m <- moderate(means)
half <- qt(.975, m$df) * sqrt(m$variance / length(sittings))
mean_of_means <- rowMeans(means)
for (i in seq_along(conditions)) {
  say(conditions[i], "mean_ms.value", mean_of_means[i])
  say(conditions[i], "mean_ms.low", mean_of_means[i] - half[i])
  say(conditions[i], "mean_ms.high", mean_of_means[i] + half[i])
  own <- presses$ms[presses$condition == conditions[i]]
  n <- length(own)
  within <- mean(sds[i, ]^2 / table(used$sitting[used$condition == conditions[i]])[sittings])
  scatter <- qt(.975, m$df[i])^2 * max(0, m$variance[i] - within) / length(sittings)
  for (q in list(c("median_ms", .5), c("p05_ms", .05), c("p95_ms", .95))) {
    p <- as.numeric(q[2])
    value <- quantile(own, p, type = 7, names = FALSE)
    low <- sort(own)[max(1, qbinom(.025, n, p))]
    high <- sort(own)[min(n, qbinom(.975, n, p) + 1)]
    say(conditions[i], paste0(q[1], ".value"), value)
    say(conditions[i], paste0(q[1], ".low"), value - sqrt((value - low)^2 + scatter))
    say(conditions[i], paste0(q[1], ".high"), value + sqrt((high - value)^2 + scatter))
  }
  say(conditions[i], "sd_ms.value", sqrt(mean(sds[i, ]^2)))
  missed <- sum(!is.finite(own))
  say(conditions[i], "missed_share.value", missed / n)
}
s <- moderate(log(sds))
for (i in seq_along(conditions)) {
  half <- qt(.975, s$df[i]) * sqrt(s$variance[i] / length(sittings))
  say(conditions[i], "sd_ms.low", sqrt(mean(sds[i, ]^2)) * exp(-half))
  say(conditions[i], "sd_ms.high", sqrt(mean(sds[i, ]^2)) * exp(half))
}

# Every pair within sittings; variances moderated over the clean pairs, each then averaged with the pooled one.
pairs <- t(combn(seq_along(conditions), 2))
differences <- means[pairs[, 1], ] - means[pairs[, 2], ]
variance <- apply(differences, 1, var)
own_df <- length(sittings) - 1
pool <- clean[pairs[, 1]] & clean[pairs[, 2]]
squeezed <- squeezeVar(variance[pool], df = own_df)
df <- rep(own_df, nrow(pairs))
df[pool] <- pmin(squeezed$df.prior + own_df, (sum(clean) - 1) * own_df)
variance[pool] <- (squeezed$var.post + mean(variance[pool])) / 2
error <- sqrt(variance / length(sittings))
difference <- rowMeans(differences)
# Held against chance, a pair whose own sittings scatter more than the moderated variance says counts by its own.
guarded <- pmax(error, apply(differences, 1, sd) / sqrt(length(sittings)))
p <- p.adjust(2 * pt(-abs(difference / guarded), df), method = "holm")
for (k in seq_len(nrow(pairs))) {
  pair <- paste(conditions[pairs[k, 1]], conditions[pairs[k, 2]], sep = "~")
  say(pair, "difference_ms.value", difference[k])
  say(pair, "difference_ms.low", difference[k] - qt(.975, df[k]) * error[k])
  say(pair, "difference_ms.high", difference[k] + qt(.975, df[k]) * error[k])
  say(pair, "p_adjusted", p[k])
  say(pair, "minimum_detectable_ms", (qt(.975, df[k]) + qt(.8, df[k])) * error[k])
}
q <- qtukey(.95, length(conditions), df) / sqrt(2)
sooner <- matrix(FALSE, length(conditions), length(conditions))
sooner[pairs] <- difference + q * error < 0
sooner[pairs[, 2:1]] <- difference - q * error > 0
for (i in seq_along(conditions)) {
  say(conditions[i], "best_rank", 1 + sum(sooner[, i]))
  say(conditions[i], "worst_rank", length(conditions) - sum(sooner[i, ]))
}
write.csv(do.call(rbind, rows), args[4], row.names = FALSE)
