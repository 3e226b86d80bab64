# Fits the invented children of simulated.csv with R: Box-Cox-normal curves by VGAM's lms.bcn, the share of boys and
# a mean curve by mgcv's penalised B-splines with restricted likelihood.
#
#   Rscript reference/independent/curves.R > reference/independent/curves-r.json
here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)))
children <- read.csv(file.path(here, "simulated.csv"))
children$x <- log(children$length_cm)
lengths <- c(52, 58, 65, 75, 85, 95, 105, 118, 132, 148, 165, 185)
new <- data.frame(x = log(lengths))

suppressPackageStartupMessages(library(mgcv))
# The same basis and penalties as the project's: 20 steps over 45 to 205 cm and three knots beyond each end.
step <- log(205 / 45) / 20
knots <- list(x = log(45) + step * (-3:23))
boys <- gam(boy ~ s(x, bs = "ps", m = c(2, 1), k = 23), family = binomial, method = "REML",
  data = children, knots = knots)
mean <- gam(log(value) ~ s(x, bs = "ps", m = c(2, 2), k = 23), method = "REML", scale = 0.15^2,
  data = children, knots = knots)

# After mgcv is done, since both packages have their own s().
suppressPackageStartupMessages(library(VGAM, warn.conflicts = FALSE))
# Vector smoothing splines in place of P-splines, with the freedom (effective degrees less the constant) that the
# project's curves take: lambda, median, spread.
sink(stderr())
lms <- vgam(value ~ s(x, df = c(1.1, 7.5, 6.2)), lms.bcn(zero = NULL, lmu = "loglink"), data = children, maxit = 60)
sink()
eta <- predict(lms, new)

curve <- function(name, values) {
  sprintf('    "%s": {\n      "value": [%s]\n    }', name, paste(sprintf("%.6g", values), collapse = ", "))
}
cat(sprintf('{
  "madeBy": "reference/independent/curves.R",
  "versions": { "R": "%s", "VGAM": "%s", "mgcv": "%s" },
  "lengthsCm": [%s],
  "curves": {
%s
  }
}
', R.version.string, packageVersion("VGAM"), packageVersion("mgcv"), paste(lengths, collapse = ", "), paste(c(
  curve("lambda", eta[, 1]),
  curve("logMedian", eta[, 2]),
  curve("logSigma", eta[, 3]),
  curve("boys", predict(boys, new)),
  curve("mean", predict(mean, new))
), collapse = ",\n")))
