# The same statistics in R, one step after another; prints step, CPU seconds, and the same checksum.
suppressMessages(library(limma))
x <- array(scan(commandArgs(TRUE)[1], quiet = TRUE), c(1500, 4, 24))
conditions <- lapply(1:24, function(i) as.vector(x[, , i]))
levels <- c(.05, .5, .95, .99)
step <- function(name, f) {
  before <- proc.time(); value <- f(); took <- proc.time() - before
  cat(sprintf("%s\t%.6f\t%.12g\n", name, took[1] + took[2], value))
}
moderate <- function() {
  m <- apply(x, c(2, 3), mean)
  list(means = colMeans(m), s = squeezeVar(apply(m, 2, var), rep(3, 24)))
}
step("summaries", function() sum(sapply(conditions, function(v) mean(v) + sd(v))))
step("quantile intervals", function() sum(sapply(conditions, function(v) {
  s <- sort(v); n <- length(s)
  sum(quantile(s, levels, names = FALSE), s[qbinom(.025, n, levels)], s[qbinom(.975, n, levels) + 1])
})))
step("densities", function() sum(sapply(conditions, function(v) max(density(v, bw = "SJ", n = 512)$y))))
step("comparisons", function() {
  d <- moderate(); i <- combn(24, 2); df <- min(d$s$df.prior + 3, 72)
  t <- (d$means[i[1, ]] - d$means[i[2, ]]) / sqrt((d$s$var.post[i[1, ]] + d$s$var.post[i[2, ]]) / 4)
  sum(p.adjust(2 * pt(-abs(t), df), "holm"))
})
step("ranking", function() {
  d <- moderate(); q <- qtukey(.95, 24, min(d$s$df.prior + 3, 72)) / sqrt(2)
  D <- outer(d$means, d$means, "-"); S <- sqrt(outer(d$s$var.post, d$s$var.post, "+") / 4)
  sum(24 - rowSums(D < -q * S) - rowSums(D > q * S))
})
step("drift and dependence", function() sum(apply(x, c(2, 3), function(v) {
  g <- gl(20, 75); b <- colMeans(matrix(rank(v), 60))
  anova(lm(v ~ g))[1, "F value"] + Box.test(v, 20, "Ljung-Box")$statistic +
    max(abs(cumsum(rank(v) - 750.5))) / (sqrt(mean(diff(b)^2) / 2 * 60) * sqrt(1500))
})))
