# Fits the benchmark's tables with lme4 and times it: Rscript against_lme4.R FOLDER
# Reads big.csv there, writes the small tables that come with R as CSV, and prints one line each:
# name, seconds of one fit with predictions, deviance, and the variances of a fit whose search was
# made tight. A tool of the benchmark only; nothing of the project needs R.
suppressPackageStartupMessages({library(lme4); library(nlme)})
folder <- commandArgs(TRUE)[1]

# The fit's variances as exactly as lme4's deviance tells them: its own search ends a few millionths
# off, so Newton's steps follow, with derivatives by central differences of two widths.
polished <- function(formula, data, start) {
    parts <- lFormula(formula, data)
    deviance <- do.call(mkLmerDevfun, parts)
    slope <- function(theta, i, h) {
        step <- replace(numeric(length(theta)), i, h)
        (deviance(theta + step) - deviance(theta - step)) / (2 * h)
    }
    gradient <- function(theta) sapply(seq_along(theta), function(i) {
        h <- 2e-3 * max(abs(theta[i]), 0.05)
        (4 * slope(theta, i, h / 2) - slope(theta, i, h)) / 3
    })
    theta <- start
    for (time in 1:4) {
        hessian <- sapply(seq_along(theta), function(i) {
            h <- 1e-3 * max(abs(theta[i]), 0.05)
            step <- replace(numeric(length(theta)), i, h)
            (gradient(theta + step) - gradient(theta - step)) / (2 * h)
        })
        theta <- theta - drop(solve((hessian + t(hessian)) / 2, gradient(theta)))
    }
    value <- deviance(theta)
    mkMerMod(environment(deviance), list(par = theta, fval = value, conv = 0),
             parts$reTrms, fr = parts$fr)
}

tell <- function(name, seconds, fit) {
    table <- as.data.frame(VarCorr(fit))
    cat(name, format(seconds, digits = 6), format(REMLcrit(fit), digits = 15),
        paste(paste(table$grp, ifelse(is.na(table$var1), "", table$var1),
                    ifelse(is.na(table$var2), "", table$var2), sprintf("%.15g", table$vcov), sep = "|"),
              collapse = " "), "\n")
}

# A single fit takes long enough to be timed alone; a small one is repeated.
run <- function(name, formula, data, times) {
    invisible(ranef(lmer(formula, data)))
    seconds <- system.time(for (i in seq_len(times)) ranef(lmer(formula, data)))["elapsed"] / times
    tell(name, seconds, polished(formula, data, getME(lmer(formula, data), "theta")))
}

small <- function(name, formula, data, columns) {
    write.csv(setNames(data[names(columns)], columns), file.path(folder, paste0(name, ".csv")),
              row.names = FALSE, quote = FALSE)
    run(name, formula, data, 30)
}

small("sleepstudy", Reaction ~ Days + (Days | Subject), sleepstudy,
      c(Reaction = "y", Days = "x", Subject = "subject"))
small("Penicillin", diameter ~ 1 + (1 | plate) + (1 | sample), Penicillin,
      c(diameter = "y", plate = "plate", sample = "sample"))
oats <- as.data.frame(Oats)
oats$dose <- factor(oats$nitro)
small("Oats", yield ~ Variety * dose + (1 | Block / Variety), oats,
      c(yield = "y", Variety = "variety", dose = "nitrogen", Block = "block"))

big <- read.csv(file.path(folder, "big.csv"), stringsAsFactors = TRUE)
formula <- y ~ year + (1 | gen) + (1 | gen:year) + (1 | year:block)
fit <- NULL
seconds <- system.time({fit <- lmer(formula, big); ranef(fit, condVar = FALSE)})["elapsed"]
tell("big", seconds, polished(formula, big, getME(fit, "theta")))
