# Rscript computed.R SEED COUNT FOLDER: a file of checks, FOLDER/computed.csv, with COUNT random inputs for every
# quantity that R can compute by itself, and the data sets of its models beside it. R is the outside judge: base R for
# distributions, least squares, roots and matrix exponentials (by eigenvectors), lme4 for models with groups.
arguments <- commandArgs(TRUE)
seed <- as.integer(arguments[1]); count <- as.integer(arguments[2]); folder <- arguments[3]
set.seed(seed)
rows <- list()
text <- function(x) paste(sprintf("%.15g", x), collapse = ",")
add <- function(quantity, inputs, expected, unit = "-", relative = 1e-9, absolute = 0) {
  tolerance <- max(absolute, relative * abs(expected))
  rows[[length(rows) + 1]] <<- data.frame(
    id = sprintf("r_%04d", length(rows) + 1), quantity = quantity, inputs = inputs, expected = sprintf("%.15g", expected),
    unit = unit, tolerance = sprintf("%.3g", tolerance),
    source = sprintf("%s, seed %d", R.version.string, seed), provenance = "computed-by-R")
}
# "name=value;name=value" of named numbers, rounded first so that both judges read the same ones.
inputs <- function(...) { values <- list(...); paste(sprintf("%s=%s", names(values), sapply(values, text)), collapse = ";") }
between <- function(low, high, digits = 4) signif(runif(1, low, high), digits)

corrosion <- function() {
  T <- between(-17, 28); RH <- between(34, 93); Pd <- between(0.7, 150); Sd <- between(0.4, 760)
  response <- function(a, pa, ha, cold, warm, b, pb, hb, tb)
    a * Pd^pa * exp(ha * RH + ifelse(T <= 10, cold, warm) * (T - 10)) + b * Sd^pb * exp(hb * RH + tb * T)
  air <- inputs(T_C = T, RH_pct = RH, Pd = Pd, Sd = Sd)
  add("zinc first-year rate", air, response(0.0129, 0.44, 0.046, 0.038, -0.071, 0.0175, 0.57, 0.008, 0.085), "um/yr")
  add("carbon steel first-year rate", air, response(1.77, 0.52, 0.020, 0.150, -0.054, 0.102, 0.62, 0.033, 0.040), "um/yr")
  add("aluminium first-year rate", air, response(0.0042, 0.73, 0.025, 0.009, -0.043, 0.0018, 0.60, 0.020, 0.094), "g/(m2.yr)")
  r <- between(0.1, 30); b <- between(0.5, 1); t <- between(0.1, 80); D <- between(5, 200)
  # The slope from 20 years on by integrating it, not by the closed form.
  lost <- function(t) r * (min(t, 20)^b + if (t > 20) integrate(function(x) 0 * x + b * 20^(b - 1), 20, t)$value else 0)
  add("attack", inputs(rcorr = r, b = b, t_yr = t), lost(t), "um")
  life <- uniroot(function(t) lost(t) - D, c(0, 1e6), tol = 1e-12, maxiter = 10000)$root
  add("time to consume coating (inverse of attack)", inputs(rcorr = r, b = b, D_um = D), life, "yr", 1e-7, 1e-9)
  add("first-year to 20-year mean factor", inputs(b = b), lost(20) / r / 20)
  add("effective age", inputs(b = b, t_yr = t), 20 * lost(t) / lost(20), "yr")
}

structure <- function() {
  D <- between(20, 120); t <- between(1.5, 6); out <- signif(0.3 * runif(1) * t, 3); into <- signif(0.3 * runif(1) * t, 3)
  ring <- function(f, D, t) integrate(f, D / 2 - t, D / 2, rel.tol = 1e-13)$value
  elastic <- function(D, t) ring(function(r) pi * r^3, D, t) / (D / 2)
  plastic <- function(D, t) ring(function(r) 4 * r^2, D, t)
  tube <- list(D_mm = D, t_mm = t)
  of <- function(...) do.call(inputs, c(tube, list(...)))
  add("area", of(), ring(function(r) 2 * pi * r, D, t), "mm2")
  add("second moment of area", of(), ring(function(r) pi * r^3, D, t), "mm4")
  add("elastic section modulus", of(), elastic(D, t), "mm3")
  add("plastic section modulus", of(), plastic(D, t), "mm3")
  add("elastic modulus after uniform loss", of(loss_out_mm = out, loss_in_mm = into), elastic(D - 2 * out, t - out - into), "mm3")
  add("plastic modulus after uniform loss", of(loss_out_mm = out, loss_in_mm = into), plastic(D - 2 * out, t - out - into), "mm3")
  fraction <- between(0.3, 0.98)
  root <- function(modulus) uniroot(function(o) modulus(D - 2 * o, t - o) / modulus(D, t) - fraction, c(0, 0.999 * t), tol = 1e-13)$root
  add("outside loss at which Wel falls to the given fraction", of(fraction = fraction), root(elastic), "mm", 1e-8)
  add("outside loss at which Wpl falls to the given fraction", of(fraction = fraction), root(plastic), "mm", 1e-8)
  fy <- between(150, 360); q <- between(0.3, 3); h <- between(0.9, 1.3)
  add("plastic moment resistance, gM0=1.0", of(fy_MPa = fy), plastic(D, t) * fy / 1e6, "kN.m")
  add("largest post spacing for gQ=1.5", of(fy_MPa = fy, q_kN_m = q, height_m = h, gQ = 1.5), plastic(D, t) * fy / 1e6 / (1.5 * q * h), "m")
  push <- between(0.1, 2)
  add("elastic tip deflection of a rigidly fixed post", of(F_kN = push, height_m = h, E_GPa = 210),
      push * 1e3 * integrate(function(x) x^2, 0, h * 1e3)$value / (210e3 * ring(function(r) pi * r^3, D, t)), "mm")
}

distributions <- function() {
  p <- signif(runif(1)^sample(1:4, 1), 6); df <- between(1, 60)
  add("standard normal quantile", inputs(p = p), qnorm(p), relative = 1e-12, absolute = 1e-14)
  add("Student t quantile", inputs(p = p, df = df), qt(p, df), relative = 1e-9, absolute = 1e-12)
  add("chi-square quantile", inputs(p = p, df = df), qchisq(p, df))
  n <- sample(3:40, 1); coverage <- between(0.5, 0.99); confidence <- between(0.6, 0.99)
  k <- uniroot(function(k) pt(k * sqrt(n), n - 1, qnorm(coverage) * sqrt(n)) - confidence, c(-5, 50), tol = 1e-12)$root
  add("one-sided normal tolerance factor k", inputs(n = n, coverage = coverage, confidence = confidence), k, relative = 1e-7, absolute = 1e-7)
  a <- between(20, 120); m <- between(0.3, 3); s <- between(1, 5); t <- signif(a / m * runif(1, 0.6, 1.6), 4)
  density <- function(x) a / (s * sqrt(2 * pi * x^3)) * exp(-(a - m * x)^2 / (2 * s^2 * x))
  add("P(T<=t), Brownian motion with drift (inverse Gaussian)", inputs(barrier = a, drift = m, sigma = s, t = t),
      integrate(density, 0, t, rel.tol = 1e-11, abs.tol = 1e-14, subdivisions = 5000)$value, absolute = 1e-8)
  shape <- between(0.2, 2); scale <- between(0.3, 3); t <- signif(a / (shape * scale) * runif(1, 0.6, 1.6), 4)
  add("P(T<=t), stationary gamma process", inputs(barrier = a, shape_per_yr = shape, scale = scale, t = t),
      pgamma(a, shape * t, scale = scale, lower.tail = FALSE), absolute = 1e-12)
  c0 <- between(30, 90); rate <- between(0.3, 4); sd <- between(0.1, 0.8)
  add("remaining-life quantile, log-normal rate", inputs(residual_um = c0, rate_median = rate, sd_ln = sd, p = p),
      c0 / qlnorm(1 - p, log(rate), sd), "yr", relative = 1e-8)
  s0 <- between(1, 8); s1 <- between(0.05, 0.5); rho <- between(-0.9, 0.9); t <- signif(c0 / rate * runif(1, 0.7, 1.4), 4)
  add("P(coating exhausted by t), normal intercept and loss slope",
      inputs(c0 = c0, slope = rate, sd_c0 = s0, sd_slope = s1, rho = rho, t = t),
      pnorm(0, c0 - rate * t, sqrt(s0^2 + (s1 * t)^2 - 2 * rho * s0 * s1 * t)), absolute = 1e-13)
  readings <- round(rnorm(sample(2:9, 1), 80, 6), 1)
  add("se of the mean of readings", inputs(readings = readings), sd(readings) / sqrt(length(readings)), relative = 1e-10)
}

chains <- function() {
  q <- signif(runif(sample(2:6, 1), 0.02, 0.6), 4); n <- length(q) + 1; t <- between(0.2, 40)
  Q <- diag(c(-q, 0)); Q[cbind(seq_along(q), seq_along(q) + 1)] <- q
  e <- eigen(Q)
  P <- e$vectors %*% diag(exp(e$values * t)) %*% solve(e$vectors)
  from <- sample(n, 1); to <- sample(from:n, 1)
  words <- sprintf("P(state at t) for a progressive %d-state chain", n)
  add(words, inputs(q = q, t = t, from = from, to = to), P[from, to], absolute = 1e-7)
  add(sprintf("mean first-passage time 1 to %d", n), inputs(q = q), sum(solve(-Q[-n, -n], rep(1, n - 1))[1]), "yr")
}

lines_and_thresholds <- function() {
  n <- sample(4:12, 1); t <- sort(signif(runif(n, 0, 20), 3)); while (anyDuplicated(t)) t <- sort(signif(runif(n, 0, 20), 3))
  y <- round(85 - between(1, 4) * t + rnorm(n, 0, 1.5), 1); limit <- sample(c(0, 20, 40), 1)
  fit <- lm(y ~ t); b <- unname(coef(fit)); V <- vcov(fit)
  it <- inputs(t = t, y = y, threshold = limit)
  add("intercept", it, b[1], "um"); add("slope", it, b[2], "um/yr"); add("residual sd", it, summary(fit)$sigma, "um")
  time <- (limit - b[1]) / b[2]; gradient <- c(-1 / b[2], -(limit - b[1]) / b[2]^2)
  add("time to threshold by straight-line fit", it, time, "yr")
  add("delta-method se of that time", it, sqrt(drop(gradient %*% V %*% gradient)), "yr")
  level <- sample(c(80, 90, 95), 1); quantile <- qt(0.5 + level / 200, n - 2)
  outside <- function(x) (b[1] + b[2] * x - limit)^2 - quantile^2 * (V[1, 1] + 2 * x * V[1, 2] + x^2 * V[2, 2])
  if (b[2]^2 > quantile^2 * V[2, 2]) {
    end <- function(direction) { far <- time + direction; while (outside(far) < 0) far <- time + 2 * (far - time)
      uniroot(outside, sort(c(time, far)), tol = 1e-12)$root }
    add(sprintf("Fieller %d %% lower limit", level), it, end(-1), "yr", 1e-7)
    add(sprintf("Fieller %d %% upper limit", level), it, end(1), "yr", 1e-7)
  }
}

# Groups of unequal size read at unequal times: no closed form, lme4 is the judge. Its own optimum is flat: criterion to
# 1e-5, variances to 0.1 %.
models <- function(number) {
  suppressPackageStartupMessages(library(lme4))
  repeat {
    groups <- sample(8:30, 1)
    data <- do.call(rbind, lapply(seq_len(groups), function(g) {
      n <- sample(2:7, 1); t <- signif(sort(runif(n, 0, 15)), 4)
      data.frame(y = round(85 + rnorm(1, 0, 6) - (1.5 + rnorm(1, 0, 0.5)) * t + rnorm(n, 0, 2), 2), t = t, part = paste0("p", g))
    }))
    control <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10, maxfun = 1e5), calc.derivs = FALSE)
    fits <- list(REML = lmer(y ~ t + (t | part), data, control = control),
                 ML = lmer(y ~ t + (t | part), data, REML = FALSE, control = control))
    if (!any(sapply(fits, isSingular))) break
  }
  name <- sprintf("groups_%d_%d", seed, number)
  write.csv(data, file.path(folder, paste0(name, ".csv")), row.names = FALSE, quote = FALSE)
  for (kind in names(fits)) {
    fit <- fits[[kind]]; V <- VarCorr(fit)$part; it <- sprintf("dataset=%s;model=y~t+(t|part);%s", name, kind)
    what <- if (kind == "REML") "REML criterion (-2 restricted log-likelihood)" else "ML deviance (-2 log-likelihood)"
    add(what, it, -2 * as.numeric(logLik(fit)), relative = 0, absolute = 1e-5)
    add("fixed intercept", it, fixef(fit)[[1]], relative = 1e-5); add("fixed slope", it, fixef(fit)[[2]], relative = 1e-4)
    add("se of fixed slope", it, sqrt(vcov(fit)[2, 2]), relative = 1e-3)
    add("residual variance", it, sigma(fit)^2, relative = 1e-3)
    add("intercept variance", it, V[1, 1], relative = 1e-3); add("slope variance", it, V[2, 2], relative = 1e-3)
    add("intercept-slope covariance", it, V[1, 2], relative = 0, absolute = 1e-3 * sqrt(V[1, 1] * V[2, 2]))
    u <- ranef(fit)$part["p3", ]
    add("BLUP slope deviation, subject p3", it, u[[2]], relative = 0, absolute = 1e-3 * sqrt(V[2, 2]))
  }
}

# Subjects of a chain seen at random times, with and without exactly known arrival in the last state: msm is the judge.
# Its optimum is flat: criterion to 1e-5, intensities to 0.1 %.
panels <- function(number) {
  suppressPackageStartupMessages(library(msm))
  n <- 4
  exact <- number %% 2 == 0
  Q <- matrix(0, n, n)
  for (k in seq_len(n - 1)) Q[k, k + 1] <- between(0.15, 0.5)
  if (exact) { Q[2, 1] <- between(0.1, 0.3); Q[3, 2] <- between(0.1, 0.3); for (k in 1:2) Q[k, n] <- between(0.05, 0.15) }
  repeat {
    looks <- do.call(rbind, lapply(1:150, function(i) data.frame(subject = i, time = c(0, sort(signif(runif(6, 0, 12), 4))))))
    data <- if (exact) simmulti.msm(looks, Q, death = n) else simmulti.msm(looks, Q)
    data <- data.frame(subject = data$subject, time = signif(data$time, 12), state = data$state)
    if (all(table(factor(data$state, 1:n)) > 20)) break
  }
  name <- sprintf("chain_%d_%d", seed, number)
  write.csv(data, file.path(folder, paste0(name, ".csv")), row.names = FALSE, quote = FALSE)
  fit <- msm(state ~ time, subject = subject, data = data, qmatrix = Q, deathexact = if (exact) n else FALSE,
             control = list(reltol = 1e-15, maxit = 10000, fnscale = 1000))
  it <- sprintf("dataset=%s;%s", name, if (exact) "4 states;death time exact" else "states 1-2-3-4 progressive;panel data")
  add("-2 log-likelihood", it, fit$minus2loglik, absolute = 1e-5)
  estimate <- qmatrix.msm(fit, ci = "none")
  for (from in 1:(n - 1)) for (to in setdiff(1:n, from)) if (Q[from, to] > 0)
    add("transition intensity", sprintf("%s;from=%d;to=%d", it, from, to), estimate[from, to], "1/yr", 1e-3)
}

# Grades that only get worse, seen with errors, at given rates and errors: msm sums over the hidden grades too.
hidden <- function(number) {
  suppressPackageStartupMessages(library(msm))
  n <- 5
  q <- signif(runif(4, 0.05, 0.3), 3); up <- between(0.01, 0.15, 2); down <- between(0.01, 0.15, 2)
  Q <- matrix(0, n, n); Q[cbind(1:4, 2:5)] <- q
  E <- matrix(0.001, n, n); E[cbind(1:4, 2:5)] <- up; E[cbind(2:5, 1:4)] <- down
  diag(E) <- 0; diag(E) <- 1 - rowSums(E)
  looks <- do.call(rbind, lapply(1:80, function(i) data.frame(subject = i, time = c(0, sort(signif(runif(sample(2:6, 1), 0.1, 25), 4))))))
  data <- simmulti.msm(looks, Q)[, c("subject", "time", "state")]
  first <- data$time == 0
  data$state[!first] <- sapply(data$state[!first], function(s) sample(n, 1, prob = E[s, ]))
  name <- sprintf("hidden_%d_%d", seed, number)
  write.csv(data, file.path(folder, paste0(name, ".csv")), row.names = FALSE, quote = FALSE)
  diag(E) <- 0
  data$known <- as.numeric(first)
  fit <- msm(state ~ time, subject = subject, data = data, qmatrix = Q, ematrix = E, obstrue = known,
             initprobs = c(1, 0, 0, 0, 0), fixedpars = TRUE)
  add("-2 log-likelihood of grades seen with errors", sprintf("dataset=%s;%s", name, inputs(q = q, up = up, down = down)),
      fit$minus2loglik, absolute = 1e-6)
}

for (i in seq_len(count)) { corrosion(); structure(); distributions(); chains(); lines_and_thresholds() }
if (length(arguments) < 4) for (i in seq_len(max(1, count %/% 10))) { models(i); panels(i); hidden(i) }
write.csv(do.call(rbind, rows), file.path(folder, "computed.csv"), row.names = FALSE, quote = TRUE)
