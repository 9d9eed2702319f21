#!/usr/bin/env bash
# One journey through the real program in a real X server: open the demo's plan, draw a route, drag a vertex, undo,
# save, print; then the saved plan, the card and the PDF are looked at. Usage: journey.sh CROSSTICK
set -euo pipefail
crosstick=$1
desk=$(mktemp -d)
trap 'kill "${window:-}" "${server:-}" 2>/dev/null || true; rm -rf "$desk"' EXIT
# A slow machine, or a program that watches itself, is given longer: CROSSTICK_PATIENCE=4.
patience=${CROSSTICK_PATIENCE:-1}
pause() { sleep "$(awk "BEGIN { print $1 * $patience }")"; }
say() { printf '%s\n' "$*" >&2; }
fail() { say "FAILED: $*"; cat "$desk/window.log" >&2 || true; exit 1; }

export XDG_RUNTIME_DIR=$desk/run XDG_CONFIG_HOME=$desk/config XDG_STATE_HOME=$desk/state XDG_DATA_HOME=$desk/data
export LC_ALL=C.UTF-8 TZ=UTC
mkdir -m 700 "$XDG_RUNTIME_DIR"
"$crosstick" demo "$desk/demo" >/dev/null 2>&1
"$crosstick" show "$desk/demo/plan.gpkg" >"$desk/before.txt"

Xvfb -displayfd 3 -screen 0 1366x768x24 3>"$desk/display" >/dev/null 2>&1 &
server=$!
for _ in $(seq 100); do [ -s "$desk/display" ] && break; sleep 0.1; done
DISPLAY=:$(tr -d '\n' <"$desk/display"); export DISPLAY
unset QT_QPA_PLATFORM WAYLAND_DISPLAY
"$crosstick" open "$desk/demo/plan.gpkg" >"$desk/window.log" 2>&1 &
window=$!
for _ in $(seq 200); do xdotool search --onlyvisible --name Crosstick >/dev/null 2>&1 && break; sleep 0.1; done
xdotool windowfocus "$(xdotool search --onlyvisible --name Crosstick | head -n 1)"
pause 3

click() { xdotool mousemove "$1" "$2"; pause 0.2; xdotool click 1; pause 0.2; }
xdotool key ctrl+r; pause 0.5
click 470 600; click 560 520; click 690 580
xdotool key Return; pause 1
xdotool type FERN; xdotool key Return; pause 0.5
xdotool mousemove 560 520 mousedown 1; pause 0.2          # a vertex is dragged
xdotool mousemove 575 505; pause 0.1; xdotool mousemove 590 470; pause 0.2; xdotool mouseup 1; pause 0.5
xdotool key ctrl+s; pause 1
"$crosstick" card "$desk/demo/plan.gpkg" --route FERN --json >"$desk/dragged.json"
xdotool key ctrl+z; pause 0.5
xdotool key ctrl+s; pause 1
xdotool key ctrl+e; pause 1
for _ in $(seq 150); do [ -s "$desk/demo/plan-cards.pdf" ] && break; sleep 0.2; done
xdotool key Escape ctrl+q
for _ in $(seq 150); do kill -0 "$window" 2>/dev/null || break; sleep 0.1; done
kill -0 "$window" 2>/dev/null && fail "the window did not close"

[ -s "$desk/window.log" ] && fail "the window said something on its terminal"
"$crosstick" show "$desk/demo/plan.gpkg" >"$desk/after.txt"
grep -q FERN "$desk/after.txt" || fail "the saved plan has no route FERN"
grep -q FERN "$desk/before.txt" && fail "FERN was there before"
"$crosstick" card "$desk/demo/plan.gpkg" --route FERN --json >"$desk/card.json"
cmp -s "$desk/card.json" "$desk/dragged.json" && fail "undo changed nothing"
"$crosstick" card "$desk/demo/plan.gpkg" --route FERN >"$desk/card.txt"
grep -q "RTE FERN" "$desk/card.txt" || fail "no card of RTE FERN"
for pdf in films cards; do
  qpdf --check "$desk/demo/plan-$pdf.pdf" >/dev/null || fail "plan-$pdf.pdf is damaged"
done
pdftotext "$desk/demo/plan-cards.pdf" "$desk/cards.txt"
grep -q "RTE FERN" "$desk/cards.txt" || fail "plan-cards.pdf does not show RTE FERN"
# Letters along a leg stand turned, which a text reader takes apart: the film is compared with the command's own.
"$crosstick" films "$desk/demo/plan.gpkg" -o "$desk/films.pdf" >/dev/null 2>&1
cmp -s "$desk/films.pdf" "$desk/demo/plan-films.pdf" || fail "the window's films are not those of the command line"
ls "$XDG_STATE_HOME"/crosstick/journals/* >/dev/null 2>&1 && fail "a journal was left though all was saved"
say "the journey is done"
