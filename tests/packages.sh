# Sourced by mobile/run and tests/run: which Debian packages each needs, and how the missing ones get here.

build_packages="g++ cmake ninja-build ccache libsqlite3-dev libssl-dev libboost-dev libeigen3-dev nlohmann-json3-dev libcli11-dev tzdata"
screens_packages="qt6-base-dev qt6-declarative-dev qt6-declarative-dev-tools qt6-tools-dev qt6-l10n-tools libgl-dev \
  qml6-module-qtquick qml6-module-qtquick-window \
  qml6-module-qtqml qml6-module-qtqml-models qml6-module-qtqml-workerscript \
  qt6-qpa-plugins libgl1-mesa-dri fonts-b612 fonts-noto-core"
# Left out: qt6-multimedia-dev, with which the screens have sounds. It brings seventy others along.
test_packages="qml6-module-qttest xvfb xauth poppler-utils catch2 librapidcheck-dev python3 git clang-format"
reference_packages="r-base-core r-cran-lme4 r-cran-msm"

# Installs what is missing among its arguments; asks nothing, says what. Says plainly what to do where it may not.
need() {
  local package missing=() as_root=()
  for package in "$@"; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || missing+=("$package")
  done
  [ ${#missing[@]} -gt 0 ] || return 0
  echo "Installing ${#missing[@]} missing Debian packages: ${missing[*]}"
  if [ "$(id -u)" != 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "These packages are missing and there is no sudo. As root, run: apt-get install ${missing[*]}" >&2
      return 3
    fi
    as_root=(sudo)
  fi
  "${as_root[@]}" apt-get update -qq &&
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
      -o DPkg::Lock::Timeout=300 "${missing[@]}" >/dev/null ||
    { echo "The packages could not be installed. Nothing was built. Check the network and the package sources." >&2; return 3; }
}

# Configures the build folder where it is not yet, or was made without the tests that are now wanted, and builds the targets
# named: build no|yes TARGET... Only what changed is built again.
build() {
  local tests=$1 wanted=OFF cache=build/CMakeCache.txt
  [ "$tests" = no ] || wanted=ON
  shift
  if [ ! -f build/build.ninja ] || ! grep -q '^KNEERAIL_SCREENS:BOOL=ON' "$cache" ||
    { [ "$tests" = yes ] && ! grep -q '^KNEERAIL_TESTS:BOOL=ON' "$cache"; }; then
    mkdir -p build
    cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release \
      -DKNEERAIL_TESTS="$wanted" -DKNEERAIL_SCREENS=ON >build/configure.log 2>&1 ||
      { cat build/configure.log >&2; echo "The build could not be set up; see above. Nothing was built." >&2; return 3; }
  fi
  cmake --build build --target "$@"
}
