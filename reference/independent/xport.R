# Reads the genuine SAS transport files with R's own reader (package foreign, read.xport) and prints for every column
# its values counted, summed, smallest and largest. No row leaves this script.
#
#   STEELYARD_DATA=DIR Rscript reference/independent/xport.R > reference/independent/xport.json
library(foreign)

folder <- file.path(Sys.getenv("STEELYARD_DATA", unset = NA), "raw", "nhanes", "xpt")
if (!dir.exists(folder)) stop("Cannot read as STEELYARD_DATA must name the folder of the open data")

check_column <- function(values) {
  known <- values[!is.na(values)]
  if (length(known) == 0) return('{ "n": 0 }')
  sprintf('{ "n": %d, "sum": %.15g, "min": %.15g, "max": %.15g }', length(known), sum(known), min(known), max(known))
}

check_file <- function(path) {
  # read.xport wants a plain file.
  plain <- tempfile(fileext = ".xpt")
  on.exit(unlink(plain))
  writeBin(readBin(gzfile(path, "rb"), "raw", 1e8), plain)
  table <- read.xport(plain)
  stopifnot(all(vapply(table, is.numeric, logical(1))))
  columns <- sprintf('        "%s": %s', names(table), vapply(table, check_column, ""))
  sprintf('    "%s": {\n      "rows": %d,\n      "columns": {\n%s\n      }\n    }',
    sub("\\.gz$", "", basename(path)), nrow(table), paste(columns, collapse = ",\n"))
}

paths <- sort(list.files(folder, pattern = "\\.XPT\\.gz$", full.names = TRUE))
cat(sprintf('{
  "madeBy": "reference/independent/xport.R",
  "versions": { "R": "%s", "foreign": "%s" },
  "files": {
%s
  }
}
', R.version.string, packageVersion("foreign"), paste(vapply(paths, check_file, ""), collapse = ",\n")))
