# Writes the reference figures beside this file. Run in this folder:
#   Rscript make_fixtures.R
# Needs lme4 (Debian: r-cran-lme4). The figures here were made with the versions in
# versions.txt, which the script also writes.
suppressPackageStartupMessages(library(lme4))
writeLines(c(R.version.string, paste("lme4", packageVersion("lme4"))), "versions.txt")

# Published data sets that come with lme4 (Bates and others 2015, J. Stat. Softw. 67).
data(Penicillin); data(InstEval)
p <- data.frame(row = as.integer(Penicillin$plate), column = as.integer(Penicillin$sample), y = Penicillin$diameter)
write.csv(p[order(p$row, p$column), ], "penicillin.csv", row.names = FALSE, quote = FALSE)
i <- data.frame(row = as.integer(InstEval$s), column = as.integer(InstEval$d), y = InstEval$y)
z <- gzfile("insteval.csv.gz", "w", compression = 9)
write.csv(i[order(i$row, i$column), ], z, row.names = FALSE, quote = FALSE)
close(z)

# A small made-up club (club.csv: runner, course, run, y), written by
#   go test -run TestClubAgainstLme4 -write-club ./pipeline/insight/speed
club <- read.csv("club.csv")
m <- lmer(y ~ 1 + (1 | runner) + (1 | course) + (1 | run), club)
v <- as.data.frame(VarCorr(m))
out <- data.frame(kind = c(paste0("variance ", v$grp), "level", "deviance"), index = 0,
                  value = c(v$vcov, fixef(m), REMLcrit(m)))
for (k in c("course", "run")) {
  b <- ranef(m)[[k]]
  out <- rbind(out, data.frame(kind = k, index = as.integer(rownames(b)), value = b[, 1]))
}
out$value <- sprintf("%.12g", out$value)
write.csv(out, "club_lme4.csv", row.names = FALSE, quote = FALSE)
