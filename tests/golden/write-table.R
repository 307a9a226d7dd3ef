# Writes a golden table: { made: { by, tool, rngSeed }, <name>: [ { column: value } ] }, numbers with 17 digits.
# Used by the other scripts of this folder, which are run from the repository root: Rscript tests/golden/<name>.R
number <- function(x) ifelse(is.finite(x), sprintf("%.17g", x), "null")
value <- function(x) if (is.character(x)) paste0('"', x, '"') else if (is.list(x)) vapply(x, function(v) paste0("[", paste(value(v), collapse = ","), "]"), "") else number(x)
rows <- function(table) {
  cells <- lapply(names(table), function(name) paste0('"', name, '":', value(table[[name]])))
  paste0("[\n", paste0("{", do.call(paste, c(cells, sep = ",")), "}", collapse = ",\n"), "\n]")
}
write_golden <- function(name, tables, rng_seed = "none") {
  made <- sprintf('{"by":"tests/golden/%s.R","tool":"%s","rngSeed":"%s"}', name, R.version.string, rng_seed)
  body <- vapply(names(tables), function(part) sprintf('"%s":%s', part, rows(tables[[part]])), "")
  writeLines(paste0('{"made":', made, ",\n", paste(body, collapse = ",\n"), "}"), file.path("tests/golden", paste0(name, ".json")))
}
