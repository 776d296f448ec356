# Recomputes values of sticks from the positions in sticks/, with base R: Rscript recheck-sticks.R
# From stick-recordings.csv it takes ranges, stated steps and which recordings are set aside. From stick-findings.csv it takes the
# values to print beside its own, and over how many recordings each goes; no value of its own rests on one of those.
span <- function(v) diff(range(v))

# The mean distance of neighbouring distinct positions, if nine in ten are about a multiple of their median.
step_of <- function(counts) {
  distinct <- sort(unique(counts)); gaps <- diff(distinct)
  if (length(distinct) < 32) return(0)
  middle <- sort(gaps)[(length(gaps) - 1) %/% 2 + 1]
  tolerance <- max(.02 * middle, if (middle > 4 && all(distinct == floor(distinct))) 1.01 else 0)
  multiples <- round(gaps / middle)
  if (sum(multiples >= 1 & abs(gaps - middle * multiples) <= tolerance) < .9 * length(gaps)) return(0)
  step <- span(distinct) / sum(pmax(1, multiples))
  # A steady motion without noise moves by the same from report to report: that is its speed, and no step.
  moved <- abs(diff(counts)) / step; single <- moved >= .5 & moved < 1.5
  if (sum(single[-1] & single[-length(single)]) >= .95 * sum(moved >= .5)) return(0)
  if (length(counts) / 2 > span(distinct) / step) step else 0
}

# Positions along an axis in per cent of half the range, and the step that they show: neighbouring positions are visited in slow
# motion, or where the levels are too many to be steps themselves.
axis_of <- function(name, recording, table) {
  low <- recording[[paste0(name, "_minimum")]]; high <- recording[[paste0(name, "_maximum")]]; stated <- recording[[paste0(name, "_step")]]
  counts <- table[[name]]
  moves <- if (recording$stimulus == "level") length(unique(table[[paste0("stimulus_", name)]])) > nrow(table) %/% 10 else recording$procedure %in% c("rim-sweep", "slow-ramp")
  found <- if (moves && span(counts) > (high - low) / 4) step_of(counts) else 0
  list(percent = 100 * (counts - (high + low) / 2) / ((high - low) / 2), half = (high - low) / 2, found = found, coarsest = max(stated, found, 0, na.rm = TRUE))
}

# How many positions an axis can say: steps of whole counts leave what is less than a step at the end of the range, others were scaled to fill it.
positions_of <- function(axis) {
  steps <- 2 * axis$half / axis$found
  (if (axis$found == floor(axis$found)) floor(steps) else round(steps)) + 1
}

# Mean of 20 batch means; standard deviation about the line through them, less that of rounding (Sheppard).
rest <- function(ms, positions, step) {
  n <- length(positions); from <- (n * 0:19) %/% 20; to <- (n * 1:20) %/% 20
  batch <- rep(1:20, to - from)
  means <- tapply(positions, batch, mean)
  line <- coef(lm(means ~ I((ms[from + 1] + ms[to]) / 2)))
  variance <- mean(tapply((positions - line[1] - line[2] * ms)^2, batch, mean))
  told <- step == 0 || span(positions) >= 1.5 * step
  c(mean(means), if (told) sqrt(max(variance - step^2 / 12, variance / 16)) else 0)
}

# First and last index of each stretch one way round; it ends where the stick has come back by 30 degrees or left the gate.
stretches <- function(angle, counts) {
  found <- list(); i <- 1; n <- length(angle); back <- pi / 6
  while (i <= n) {
    low <- high <- i; way <- 0
    while (i <= n && counts[i]) {
      if (way <= 0 && angle[i] <= angle[low]) low <- i
      if (way >= 0 && angle[i] >= angle[high]) high <- i
      if (way == 0) way <- if (angle[i] - angle[low] > back) 1 else if (angle[high] - angle[i] > back) -1 else 0
      if ((way > 0 && angle[high] - angle[i] > back) || (way < 0 && angle[i] - angle[low] > back)) break
      i <- i + 1
    }
    if (way != 0) found <- c(found, list(if (way > 0) c(low, high) else c(high, low)))
    i <- if (way != 0 && i <= n && counts[i]) max(low, high) else i + 1
  }
  found
}

# The whole turns of a sweep: from an index up to before another, and whether counter-clockwise.
turns <- function(x, y) {
  radius <- sqrt(x^2 + y^2); raw <- atan2(y, x); jump <- c(0, diff(raw))
  angle <- raw + 2 * pi * cumsum(ifelse(jump > pi, -1, ifelse(jump < -pi, 1, 0)))
  found <- list()
  for (s in stretches(angle, radius > sort(radius)[length(radius) %/% 2 + 1] / 2)) { start <- s[1]
    for (i in s[1]:s[2]) if (abs(angle[i] - angle[start]) >= 2 * pi) {
      found <- c(found, list(list(at = start:(i - 1), left = angle[s[2]] > angle[s[1]]))); start <- i } }
  found
}

# Mean positions in equal bins of angle, of each pair of turns one each way, or of each turn where there are not two pairs.
profiles <- function(x, y) {
  found <- turns(x, y); share <- (atan2(y, x) / (2 * pi)) %% 1
  for (bins in c(360, 180, 120, 72, 36)) {
    bin <- factor(floor(share * bins) %% bins, levels = 0:(bins - 1))
    if (length(found) > 0 && all(sapply(found, function(turn) all(table(bin[turn$at]) > 0)))) {
      chord <- sin(pi / bins) / (pi / bins) # the mean of points along an arc lies inside it
      means <- lapply(found, function(turn) cbind(tapply(x[turn$at], bin[turn$at], mean), tapply(y[turn$at], bin[turn$at], mean)) / chord)
      left <- means[sapply(found, `[[`, "left")]; right <- means[!sapply(found, `[[`, "left")]; pairs <- min(length(left), length(right))
      return(if (pairs >= 2) lapply(1:pairs, function(k) (left[[k]] + right[[k]]) / 2) else means)
    }
  }
  list()
}

distances <- function(profile, circle) sqrt((profile[, 1] - circle[1])^2 + (profile[, 2] - circle[2])^2)

# Centre and radius of the circle with the least squares of distances, by Gauss and Newton.
circle <- function(profile) {
  at <- c(colMeans(profile), 0); at[3] <- mean(distances(profile, at))
  for (step in 1:100) { d <- distances(profile, at)
    change <- qr.solve(cbind((profile[, 1] - at[1]) / d, (profile[, 2] - at[2]) / d, 1), d - at[3]); at <- at + change
    if (max(abs(change)) < 1e-12 * at[3]) break }
  at
}

# Peak less valley about the circle: where they stand is told by the other turns, how high by the turn itself; mean over turns.
deviation <- function(turned) mean(sapply(seq_along(turned), function(k) {
  others <- Reduce(`+`, turned[-k]) / (length(turned) - 1); about <- circle(others); d <- distances(others, about); n <- length(d)
  smooth <- if (n >= 120) Reduce(`+`, lapply(-2:2, function(by) d[(seq_len(n) - 1 - by) %% n + 1])) else d
  own <- distances(turned[[k]], about)
  own[which.max(smooth)] - own[which.min(smooth)] }))

# Of each key the values of the recordings of a condition that show it.
values_of <- function(recordings) {
  loaded <- lapply(seq_len(nrow(recordings)), function(i) { recording <- recordings[i, ]
    table <- read.csv(paste0("sticks/", recording$session, ".csv")); ms <- table$time_us / 1000
    list(procedure = recording$procedure, ms = ms - ms[1], x = axis_of("x", recording, table), y = axis_of("y", recording, table)) })
  found <- list()
  add <- function(key, value) found[[key]] <<- c(found[[key]], value)
  for (one in loaded) {
    for (name in c("x", "y")) { axis <- one[[name]]
      if (one$procedure == "rest" && length(one$ms) >= 200) {
        step <- max(sapply(loaded, function(any) any[[name]]$coarsest))
        said <- rest(one$ms, axis$percent, 100 * step / axis$half)
        add(paste0("centre_offset_", name, "_percent"), said[1]); add(paste0("rest_noise_", name, "_percent"), said[2])
      }
      if (one$procedure %in% c("rim-sweep", "slow-ramp", "substitution") && axis$found > 0) add(paste0("distinct_steps_", name, "_count"), positions_of(axis))
    }
    turned <- if (one$procedure == "rim-sweep") profiles(one$x$percent, one$y$percent) else list()
    if (length(turned) > 0) { fitted <- rowMeans(sapply(turned, circle))
      add("circle_radius_percent", fitted[3]); add("circle_centre_x_percent", fitted[1]); add("circle_centre_y_percent", fitted[2]) }
    if (length(turned) > 1) add("radial_deviation_percent", deviation(turned))
  }
  found
}

recordings <- read.csv("stick-recordings.csv", colClasses = c(session = "character", condition = "character"))
recordings <- recordings[recordings$excluded == 0, ]
published <- read.csv("stick-findings.csv", colClasses = c(condition = "character"))
greatest <- shown <- 0
for (condition in unique(published$condition)) {
  found <- values_of(recordings[recordings$condition == condition, ])
  for (key in names(found)) { values <- found[[key]]
    row <- published[published$condition == condition & published$key == key & !is.na(published$value), ]
    # A recording may be refused for a measure: a circle that is cut off, or a centre from releases where nobody let it rest.
    if (nrow(row) == 0 || row$sessions != length(values)) next
    # Noise is a size: the mean of its logarithm; 0 in a recording is not told from none.
    value <- if (!startsWith(key, "rest_noise")) mean(values) else if (min(values) > 0) exp(mean(log(values))) else max(values)
    cat(condition, key, sprintf("%.6f", value), format(row$value, digits = 15), sep = " | "); cat("\n")
    greatest <- max(greatest, abs(value - row$value)); shown <- shown + 1
  }
}
cat(sprintf("%d values recomputed; greatest difference from stick-findings.csv %.1e\n", shown, greatest))
