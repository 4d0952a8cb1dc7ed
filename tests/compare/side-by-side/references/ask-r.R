# Asks R's stats package about its own data sets and writes what it answers to r-answers.json.
#
#   apt-get install --no-install-recommends r-base-core
#   Rscript tests/compare/side-by-side/references/ask-r.R && npx biome format --write tests/compare/side-by-side/references
#
# Only needed when the questions change: the tests read the JSON alone. Data: sleep (Student 1908), PlantGrowth (Dobson 1983), InsectSprays
# (Beall 1942), npk (peas, Rothamsted, after Venables and Ripley), all from R's package datasets.
num <- function(x) paste0("[", paste(sprintf("%.15g", x), collapse = ","), "]")
obj <- function(...) { v <- list(...); paste0("{", paste(sprintf("\"%s\":%s", names(v), v), collapse = ","), "}") }
one <- function(x) sprintf("%.15g", x)
shift <- function(a, b, level, paired = FALSE) {
  w <- suppressWarnings(wilcox.test(b, a, paired = paired, conf.int = TRUE, conf.level = level, exact = TRUE))
  t <- t.test(b, a, paired = paired, conf.level = level)
  obj(first = num(a), second = num(b), level = one(level), paired = if (paired) "true" else "false",
      rankLow = one(w$conf.int[1]), rankHigh = one(w$conf.int[2]), rankEstimate = one(w$estimate),
      tLow = one(t$conf.int[1]), tHigh = one(t$conf.int[2]), tEstimate = one(if (paired) t$estimate else t$estimate[1] - t$estimate[2]))
}
g <- function(d, value, group, level) d[[value]][d[[group]] == level]
growth <- split(PlantGrowth$weight, PlantGrowth$group)
# Hollander and Wolfe's two examples are the ones of R's help page of wilcox.test.
hw1a <- c(1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30)
hw1b <- c(0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29)
hw2a <- c(0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46)
hw2b <- c(1.15, 0.88, 0.90, 0.74, 1.21)
shifts <- c(
  shift(hw1b, hw1a, 0.95, TRUE), shift(hw1b, hw1a, 0.9, TRUE), shift(hw2a, hw2b, 0.95), shift(hw2a, hw2b, 0.9),
  shift(growth$trt1, growth$trt2, 0.9), shift(growth$ctrl, growth$trt2, 1 - 0.1 / 3))
# Ties: R leaves the exact way there, so only its t intervals are compared.
tied <- c(shift(growth$ctrl, growth$trt1, 1 - 0.1 / 3), shift(sleep$extra[1:10], sleep$extra[11:20], 0.9, TRUE), shift(sleep$extra[1:10], sleep$extra[11:20], 0.9))
fit <- lm(yield ~ block + N, npk)
blocks <- obj(block = num(as.integer(npk$block)), treated = num(as.integer(npk$N) - 1), value = num(npk$yield),
  estimate = one(coef(fit)["N1"]), low = one(confint(fit, "N1", 0.9)[1]), high = one(confint(fit, "N1", 0.9)[2]),
  spread = one(summary(fit)$sigma), mean = one(mean(npk$yield)))
tgrid <- expand.grid(t = c(-7, -2.5, -0.3, 0, 0.4, 1.7, 6, 40), df = c(1, 1.7, 3, 10, 58.2, 400))
qgrid <- expand.grid(p = c(0.001, 0.05, 0.5, 0.9, 0.95, 0.9916667, 0.9999), df = c(1, 2.3, 4, 18, 200))
ngrid <- expand.grid(t = c(-3, -0.5, 0, 0.7, 2.1, 6.31, 12), df = c(1, 2, 5, 18, 126), shift = c(-1.2, 0.5, 2.8, 7, 20))
power <- function(n, delta, level, type) power.t.test(n = n, delta = delta, sd = 1, sig.level = level, type = type, strict = TRUE)$power
pgrid <- expand.grid(n = c(2, 3, 6, 17, 64), delta = c(0.5, 0.8, 1.5), level = c(0.05, 0.1), type = c("two.sample", "one.sample"), stringsAsFactors = FALSE)
ranks <- c(obj(m = "3", n = "4", chances = num(dwilcox(0:12, 3, 4))), obj(m = "7", n = "12", chances = num(dwilcox(0:84, 7, 12))),
  obj(m = "40", n = "45", chances = num(dwilcox(seq(0, 900, 1), 40, 45))))
signs <- c(obj(n = "5", chances = num(dsignrank(0:15, 5))), obj(n = "17", chances = num(dsignrank(0:153, 17))))
d2 <- sapply(2:25, function(n) integrate(function(x) 1 - (1 - pnorm(x))^n - pnorm(x)^n, -Inf, Inf, rel.tol = 1e-10)$value)
list_of <- function(x) paste0("[", paste(x, collapse = ",\n"), "]")
cells <- function(d, value) list_of(apply(cbind(d, value), 1, function(r) num(as.numeric(r))))
path <- "tests/compare/side-by-side/references/r-answers.json"
writeLines(obj(
  with = sprintf("\"%s, package stats\"", R.version.string),
  shifts = list_of(shifts), tied = list_of(tied), blocks = blocks,
  tCdf = cells(tgrid, pt(tgrid$t, tgrid$df)), tQuantile = cells(qgrid, qt(qgrid$p, qgrid$df)),
  noncentralT = cells(ngrid, suppressWarnings(pt(ngrid$t, ngrid$df, ngrid$shift))),
  power = list_of(mapply(function(n, delta, level, type) obj(n = one(n), delta = one(delta), level = one(level), paired = if (type == "one.sample") "true" else "false", power = one(power(n, delta, level, type))), pgrid$n, pgrid$delta, pgrid$level, pgrid$type)),
  orders = list_of(ranks), signs = list_of(signs), rangeOfNormals = num(d2),
  plantGrowth = obj(ctrl = num(growth$ctrl), trt1 = num(growth$trt1), trt2 = num(growth$trt2)),
  insectSprays = obj(C = num(g(InsectSprays, "count", "spray", "C")), E = num(g(InsectSprays, "count", "spray", "E")), F = num(g(InsectSprays, "count", "spray", "F")))), path)
