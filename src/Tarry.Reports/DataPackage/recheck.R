# Recomputes the headline table from trials.csv with base R: Rscript recheck.R
# From headline.csv it takes what the interval borrows from all conditions (shared variance, weight, degrees of freedom), and no result.
x <- read.csv("trials.csv", colClasses = c(condition = "character", sitting = "character"))
x <- x[x$outcome == "response" & x$excluded == 0, ]
h <- read.csv("headline.csv", colClasses = c(condition = "character"))
ms <- (x$latency_us + ifelse(is.na(x$latency_high_us), x$latency_us, x$latency_high_us)) / 2000
m <- tapply(ms, list(x$condition, x$sitting), mean)[h$condition, , drop = FALSE]
text <- function(v, shared, weight, df, sign = "") { v <- v[!is.na(v)]
  half <- qt(.975, df) * sqrt((shared + weight * max(0, var(v), na.rm = TRUE)) / length(v))
  if (is.na(half)) sprintf("%.3f (interval: see findings.json)", mean(v)) else { number <- paste0("%", sign, ".", if (half > 0) min(3, max(0, 1 - floor(log10(2 * half)))) else 3, "f")
    gsub("-", "\u2212", sprintf(paste0(number, " (", number, " to ", number, ")"), mean(v), mean(v) - half, mean(v) + half)) } }
for (i in order(rowMeans(m, na.rm = TRUE))) { d <- m[i, ] - m[match(1, h$is_reference), ]
  cat(h$condition[i], text(m[i, ], h$mean_shared_variance_ms2[i], h$mean_own_weight[i], h$mean_degrees_of_freedom[i]),
    if (h$is_reference[i] == 1) "is the reference" else if (all(is.na(d))) "no sitting with the reference" else text(d, h$difference_shared_variance_ms2[i], h$difference_own_weight[i], h$difference_degrees_of_freedom[i], "+"),
    sum(!is.na(m[i, ])), sum(x$condition == h$condition[i]), sep = " | "); cat("\n") }
