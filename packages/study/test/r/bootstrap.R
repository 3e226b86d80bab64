# Cluster bootstrap by the boot package: 20,000 replicates, percentile and BCa, on invented clusters. Writes bootstrap.json.
suppressMessages({ library(jsonlite); library(boot) })
set.seed(11)
k <- 80; m <- sample(1:4, k, TRUE)
cluster <- rep(seq_len(k) - 1, m)
error <- round(1 + rep(rnorm(k, 0, 4), m) + rexp(sum(m), 1 / 6) - 6, 3)
# boot draws the clusters; the statistic sees sums of the drawn ones.
S <- cbind(m, tapply(error, cluster, sum), tapply(error^2, cluster, sum), tapply(abs(error) <= 10, cluster, sum))
f <- function(d, i) { t <- colSums(d[i, ]); c(t[2] / t[1], sqrt(t[3] / t[1]), 100 * t[4] / t[1]) }
b <- boot(S, f, R = 20000)
ci <- lapply(1:3, function(j) { c <- boot.ci(b, type = c("perc", "bca"), index = j); list(value = unname(b$t0[j]), se = sd(b$t[, j]), percentile = c$percent[4:5], bca = c$bca[4:5]) })
writeLines(toJSON(list(r = R.version.string, boot = as.character(packageVersion("boot")), cluster = cluster, error = error, intervals = setNames(ci, c("meanPercent", "rmspe", "within10"))), auto_unbox = TRUE, digits = NA), "bootstrap.json")
