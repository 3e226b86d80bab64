# Every closed form of packages/study again, in R and its packages, from formulas and functions that share nothing with the TypeScript.
# Run in this folder: Rscript statistics.R; it writes statistics.json, which test/independent.test.ts compares.
suppressMessages({ library(jsonlite); library(metafor); library(psych) })
x <- fromJSON("cases.json", simplifyVector = TRUE, simplifyMatrix = TRUE)
z <- qnorm(.975)
out <- list()

d <- x$differences; n <- length(d); s <- sd(d)
tt <- t.test(d)
sdci <- s * sqrt((n - 1) / qchisq(c(.975, .025), n - 1))
low <- mean(d) - z * s; up <- mean(d) + z * s
mh <- mean(d) - tt$conf.int[1]
half <- qt(.975, n - 1) * s * sqrt(1 / n + z^2 / (2 * (n - 1)))
out$limits <- list(bias = c(mean(d), tt$conf.int), sd = c(s, sdci),
  lower = c(low, low - sqrt(mh^2 + z^2 * (sdci[2] - s)^2), low + sqrt(mh^2 + z^2 * (s - sdci[1])^2)),
  upper = c(up, up - sqrt(mh^2 + z^2 * (s - sdci[1])^2), up + sqrt(mh^2 + z^2 * (sdci[2] - s)^2)),
  approximateUpper = c(up, up - half, up + half))

line <- function(y, a) { m <- lm(y ~ a); cf <- coef(summary(m)); list(intercept = c(cf[1, 1], confint(m)[1, ]), slope = c(cf[2, 1], confint(m)[2, ]), p = cf[2, 4]) }
m <- lm(d ~ x$sizes); r <- lm(abs(resid(m)) ~ x$sizes)
at20 <- sum(coef(m) * c(1, 20)); h20 <- z * sqrt(pi / 2) * max(0, sum(coef(r) * c(1, 20)))
out$regression <- list(bias = line(d, x$sizes), spread = line(abs(resid(m)), x$sizes), at20 = c(at20, at20 - h20, at20 + h20))

a <- x$first; b <- x$second; k <- length(a)
va <- var(a) * (k - 1) / k; vb <- var(b) * (k - 1) / k; cab <- cov(a, b) * (k - 1) / k
ccc <- 2 * cab / (va + vb + (mean(a) - mean(b))^2); rho <- cor(a, b); u <- (mean(b) - mean(a)) / (va * vb)^.25
sep <- sqrt(((1 - rho^2) * ccc^2 * (1 - ccc^2) / rho^2 + 2 * ccc^3 * (1 - ccc) * u^2 / rho - .5 * ccc^4 * u^4 / rho^2) / (k - 2))
set <- sep / (1 - ccc^2)
out$concordance <- c(ccc, tanh(atanh(ccc) + c(-1, 1) * z * set), rho)

wil <- function(c, n, conf = .95) suppressWarnings(prop.test(c, n, correct = FALSE, conf.level = conf)$conf.int)
out$pairs <- apply(x$pairs, 1, function(q) {
  a <- q[1]; b <- q[2]; c <- q[3]; e <- q[4]; n <- sum(q)
  l1 <- wil(a + b, n); l2 <- wil(a + c, n); p1 <- (a + b) / n; p2 <- (a + c) / n
  A <- prod(a + b, c + e, a + c, b + e); B <- a * e - b * c
  phi <- if (A == 0) 0 else (if (B > n / 2) B - n / 2 else if (B >= 0) 0 else B) / sqrt(A)
  dl1 <- p1 - l1[1]; du1 <- l1[2] - p1; dl2 <- p2 - l2[1]; du2 <- l2[2] - p2
  ex <- if (b + c > 0) binom.test(b, b + c)$p.value else 1
  mid <- if (b + c > 0) min(1, 2 * pbinom(min(b, c), b + c, .5) - dbinom(min(b, c), b + c, .5)) else 1
  chi <- if (b + c > 0) mcnemar.test(matrix(c(a, c, b, e), 2), correct = FALSE) else list(statistic = 0, p.value = 1)
  c(exactP = ex, midP = mid, chiSquared = unname(chi$statistic), asymptoticP = chi$p.value, value = p1 - p2,
    low = p1 - p2 - sqrt(dl1^2 - 2 * phi * dl1 * du2 + du2^2), high = p1 - p2 + sqrt(du1^2 - 2 * phi * du1 * dl2 + dl2^2))
}, simplify = FALSE)
out$pairs <- lapply(out$pairs, as.list)

out$holm <- p.adjust(x$pValues, "holm"); out$bh <- p.adjust(x$pValues, "BH")
e <- x$errorsFirst; f <- x$errorsSecond
ts <- t.test(e^2, f^2, paired = TRUE); ta <- t.test(abs(e), abs(f), paired = TRUE); pm <- cor.test(e + f, e - f)
out$errors <- list(squared = c(ts$estimate, ts$conf.int, ts$statistic, ts$p.value), absolute = c(ta$estimate, ta$conf.int, ta$statistic, ta$p.value),
  spread = c(sd(e) / sd(f), pm$statistic, pm$p.value))

icc <- suppressWarnings(ICC(x$readings, lmer = FALSE))$results
out$icc <- apply(icc[, c("ICC", "lower bound", "upper bound")], 1, as.numeric, simplify = FALSE)
names(out$icc) <- icc$type
kap <- function(w) {
  M <- x$kappa; n <- sum(M); P <- M / n; pr <- rowSums(P); pc <- colSums(P)
  po <- sum(w * P); pe <- sum(w * outer(pr, pc)); K <- (po - pe) / (1 - pe)
  W <- outer(as.vector(w %*% pc), as.vector(t(w) %*% pr), "+")
  se <- sqrt((sum(P * (w - W * (1 - K))^2) - (K - pe * (1 - K))^2) / (n * (1 - pe)^2))
  c(K, se, K - z * se, K + z * se)
}
D <- abs(row(x$kappa) - col(x$kappa)) / 2
out$kappa <- list(none = kap(diag(3)), linear = kap(1 - D), quadratic = kap(1 - D^2))
ck <- cohen.kappa(x$kappa)
out$kappaPsych <- c(ck$kappa, sqrt(ck$var.kappa), ck$weighted.kappa)

q <- x$readingsTwo; dq <- q[, 1] - q[, 2]; tem <- sqrt(sum(dq^2) / (2 * nrow(q)))
out$tem <- list(tem = c(tem, sqrt(2 * nrow(q) * tem^2 / 2 / qchisq(c(.975, .025), nrow(q)))), relative = 100 * tem / mean(q), reliability = 1 - tem^2 / var(as.vector(q)))
rep <- function(varying) {
  L <- fromJSON("cases.json", simplifyVector = FALSE)$repeated
  X <- lapply(L, function(l) unlist(l$first)); Y <- lapply(L, function(l) unlist(l$second))
  k <- length(L); md <- sapply(X, mean) - sapply(Y, mean)
  within <- function(G) { v <- unlist(lapply(seq_along(G), function(i) rep_len(i, length(G[[i]])))); ms <- anova(lm(unlist(G) ~ factor(v))); list(v = ms["Residuals", "Mean Sq"], df = ms["Residuals", "Df"], h = 1 / mean(1 / lengths(G))) }
  W <- if (varying) list(within(Map("-", X, Y))) else list(within(X), within(Y))
  parts <- c(list(c(var(md), k - 1)), lapply(W, function(w) c((1 - 1 / w$h) * w$v, w$df)))
  tot <- sum(sapply(parts, `[`, 1))
  lo <- tot - sqrt(sum(sapply(parts, function(p) (p[1] * (1 - p[2] / qchisq(.975, p[2])))^2)))
  hi <- tot + sqrt(sum(sapply(parts, function(p) (p[1] * (p[2] / qchisq(.025, p[2]) - 1))^2)))
  g <- qt(.975, k - 1) * sqrt(var(md) / k); S <- sqrt(tot); U <- mean(md) + z * S
  list(bias = c(mean(md), mean(md) - g, mean(md) + g), sd = c(S, sqrt(max(0, lo)), sqrt(hi)), upper = c(U, U - sqrt(g^2 + z^2 * (S - sqrt(max(0, lo)))^2), U + sqrt(g^2 + z^2 * (sqrt(hi) - S)^2)))
}
out$repeated <- list(varying = rep(TRUE), constant = rep(FALSE))

pool <- function(y, v, method, hk) {
  m <- rma(y, v, method = method, test = if (hk) "knha" else "z", control = list(threshold = 1e-14, maxiter = 10000))
  pr <- m$beta[1] + c(-1, 1) * qt(.975, m$k - 2) * sqrt(m$tau2 + m$se^2)
  list(pooled = c(m$beta[1], m$ci.lb, m$ci.ub), se = m$se, p = m$pval, tau2 = m$tau2, i2 = m$I2, q = m$QE, prediction = pr, shares = as.numeric(weights(m)) / 100)
}
out$pool <- list(dl = pool(x$effects, x$variances, "DL", FALSE), dlhk = pool(x$effects, x$variances, "DL", TRUE),
  reml = pool(x$effects, x$variances, "REML", FALSE), remlhk = pool(x$effects, x$variances, "REML", TRUE),
  alike = pool(x$effectsAlike, x$variancesAlike, "REML", FALSE))

out$wilson <- apply(x$wilson, 1, function(w) as.numeric(wil(w[1], w[2])), simplify = FALSE)
out$power <- apply(x$power, 1, function(w) { n <- w[1]; ok <- sapply(0:n, function(c) wil(c, n)[1] > w[2]); sum(dbinom((0:n)[ok], n, w[3])) })
out$limitHalfWidth <- sapply(c(50, 100, 200), function(n) z * sqrt(1 / n + z^2 / (2 * (n - 1))))
g <- x$quantiles
out$t <- outer(g$p, g$df, qt); out$chisq <- outer(g$p, g$df, qchisq); out$f <- outer(g$p, g$df, function(p, v) qf(p, 5, v))

writeLines(toJSON(list(r = R.version.string, packages = list(metafor = as.character(packageVersion("metafor")), psych = as.character(packageVersion("psych"))), results = out),
  auto_unbox = TRUE, digits = NA, pretty = TRUE), "statistics.json")
