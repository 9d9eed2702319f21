#!/usr/bin/env bash
# Pictures of the window's main situations: screens.sh CROSSTICK WINDOW_SCREENS FOLDER
set -euo pipefail
crosstick=$1 screens=$2 out=$3
export QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8 TZ=UTC
XDG_RUNTIME_DIR=${XDG_RUNTIME_DIR:-$(mktemp -d)}; export XDG_RUNTIME_DIR
mkdir -p "$out"
[ -f "$out/demo/plan.gpkg" ] || "$crosstick" demo "$out/demo" >/dev/null
take() { # folder size light scale
  cp "$out/demo/plan.gpkg" "$out/demo/looked-at.gpkg"
  QT_SCALE_FACTOR=$4 "$screens" "$out/demo/looked-at.gpkg" "$out/$1" "$2" "$3"
}
take 1366x768-day 1366x768 day 1
take 1366x768-night 1366x768 night 1
take 1920x1080-day 1920x1080 day 1
take 1920x1080-night 1920x1080 night 1
take 200-percent-day 1366x768 day 2
take 200-percent-night 1366x768 night 2
rm -f "$out/demo/looked-at.gpkg"
echo "$out"
