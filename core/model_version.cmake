# Writes OUT: the number of the models and a digest of all sources under ROOT that they are built from.
file(GLOB_RECURSE sources RELATIVE ${ROOT} ${ROOT}/base/* ${ROOT}/statistics/* ${ROOT}/corrosion/* ${ROOT}/structure/*
  ${ROOT}/forecast/*)
list(FILTER sources INCLUDE REGEX "[.](cpp|h)$")
list(SORT sources)
set(all)
foreach(source IN LISTS sources)
  file(SHA256 ${ROOT}/${source} digest)
  string(APPEND all "${source} ${digest}\n")
endforeach()
string(SHA256 KNEERAIL_MODEL_DIGEST "${all}")
string(SUBSTRING ${KNEERAIL_MODEL_DIGEST} 0 16 KNEERAIL_MODEL_DIGEST)
configure_file(${ROOT}/model_version.cpp.in ${OUT} @ONLY)
file(TOUCH ${OUT})  # also where the digest is the same: it is newer than the sources
