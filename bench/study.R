# The peer of bench/study.ts: the same bootstrap and the same accuracy table in R. Prints seconds.
args <- commandArgs(TRUE)
if (args[1] == "bootstrap") {
  set.seed(1); k <- 5000; e <- rnorm(k, 1, 8); S <- cbind(1, e, e^2, abs(e) <= 10)
  took <- system.time({
    B <- t(vapply(seq_len(20000), function(r) colSums(S[sample.int(k, k, TRUE), ]), numeric(4)))
    quantile(B[, 2] / B[, 1], c(.025, .975)); quantile(sqrt(B[, 3] / B[, 1]), c(.025, .975)); quantile(B[, 4] / B[, 1], c(.025, .975))
  })
} else {
  took <- system.time({
    d <- read.csv(args[2], colClasses = c("character", "numeric", "numeric", "numeric"))
    e <- 100 * (d$est_kg - d$weight_kg) / d$weight_kg
    figures <- function(e) c(length(e), mean(e), sd(e), median(e), mad(e, constant = 1), sqrt(mean(e^2)), mean(abs(e)), mean(abs(e) <= 10), mean(abs(e) <= 20), mean(abs(e) <= 30))
    figures(e); tapply(e, d$site, figures); tapply(e, cut(d$length_cm, c(0, 60, 75, 90, 105, 120, 135, 150, 999)), figures)
  })
}
cat(took[["user.self"]] + took[["sys.self"]], "\n")
