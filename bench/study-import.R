# The same table as bench/study-import.ts: seconds, peak MB, share of a_kg within 10 %.
started <- proc.time()[["elapsed"]]
d <- read.csv(commandArgs(TRUE)[1])
d$length_band <- findInterval(d$length_cm, c(60, 75, 90, 105, 120, 135, 150))
d$age_band <- findInterval(d$age_months, c(6, 12, 24, 60, 120, 180))
figures <- function(e) {
  c(mean(e), sd(e), median(e), mad(e, constant = 1), sqrt(mean(e^2)), mean(abs(e)),
    mean(abs(e) <= 10 + 1e-9), mean(abs(e) <= 20 + 1e-9), mean(abs(e) <= 30 + 1e-9))
}
for (method in c("b_kg", "a_kg")) {
  error <- 100 * (d[[method]] - d$weight_kg) / d$weight_kg
  overall <- figures(error)
  for (by in c("length_band", "age_band", "sex", "site")) tapply(error, d[[by]], figures)
}
peak <- as.numeric(sub("[^0-9]*([0-9]+).*", "\\1", grep("VmHWM", readLines("/proc/self/status"), value = TRUE))) / 1024
cat(proc.time()[["elapsed"]] - started, peak, format(overall[7], digits = 17), "\n")
