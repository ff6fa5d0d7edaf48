# Rscript export_data.R FOLDER: writes the data sets that package_checks.csv names from the installed R packages. They
# belong to those packages and are not kept here.
folder <- commandArgs(TRUE)[1]
dir.create(folder, showWarnings = FALSE, recursive = TRUE)
suppressPackageStartupMessages(library(lme4))
write.csv(sleepstudy[, c("Reaction", "Days", "Subject")], file.path(folder, "sleepstudy.csv"), row.names = FALSE, quote = FALSE)
write.csv(Dyestuff[, c("Batch", "Yield")], file.path(folder, "dyestuff.csv"), row.names = FALSE, quote = FALSE)
suppressPackageStartupMessages(library(msm))
write.csv(cav[, c("PTNUM", "years", "state")], file.path(folder, "cav.csv"), row.names = FALSE, quote = FALSE)
write.csv(psor[, c("ptnum", "months", "state")], file.path(folder, "psor.csv"), row.names = FALSE, quote = FALSE)
