#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array<Words, 27> kWords{{
    {"files/file-missing", "{file}: there is no such file. Check the name and the folder."},
    {"files/file-exists", "{file} exists already and is left as it is. Choose another name."},
    {"files/folder-missing", "{folder}: there is no such folder. Make it first, or choose another."},
    {"files/cannot-open", "{file} cannot be opened: {why}. Check who may read and write it and its folder."},
    {"files/not-a-plan", "{file} is no plan: it is no database at all. A plan's file is made by crosstick new."},
    {"files/no-plan-inside",
     "{file} is a database without a plan of ours in it. A plan's file is made by crosstick new."},
    {"files/damaged-plan", "{file} is damaged: {why}. Take the last good copy; the file itself was left as it is."},
    {"files/newer-plan",
     "{file} was written by a newer crosstick (plan schema {found}, this one knows {known}). Open it with that one."},
    {"files/read-only", "{file} cannot be written: it or its folder is read-only. Save it under another name."},
    {"files/locked-now", "{file} is being written by another program just now. Try again, or save under another name."},
    {"files/disk-full",
     "{file} could not be saved: the disk is full. The file is as it was before; free some space, or save elsewhere."},
    {"files/io-error", "{file} could not be read or written: {why}. Check the disk; a copy elsewhere may be safer."},
    {"files/changed-meanwhile",
     "{file} was saved by somebody else since it was opened here. Save under another name, then compare the two."},
    {"files/replaced-meanwhile",
     "{file} was moved away or replaced by another file since it was opened here. Save under another name."},
    {"files/plan-too-large", "{file} is too large to be a plan: {why}."},
    {"files/bad-field", "{what}: \"{field}\" must be {expected}."},
    {"files/bad-geometry", "A stored geometry is not readable. Take the last good copy of the plan."},
    {"files/not-json", "This is no JSON: {why}."},
    {"files/not-geojson", "This is no GeoJSON: a FeatureCollection with up to 100,000 features is expected."},
    {"files/bad-feature", "Feature {feature} cannot be drawn: {why}. Nothing was drawn; mend it and draw again."},
    {"files/no-kind",
     "Feature {feature} does not say what it is. Give its properties a \"kind\", such as \"phase-line\" or \"route\"; "
     "nothing was drawn."},
    {"files/not-carried", "{file} does not carry {path}. Put the sheet beside the plan, or say where it is."},
    {"files/cannot-write", "{file} cannot be written. Check the folder, and whether its disk is full."},
    {"files/given-up", "Given up; the plan is as it was."},
    {"files/journal-damaged", "{file}: this record of unsaved work is not readable. It was left where it is."},
    {"files/journal-of-other-state",
     "The unsaved work in {journal} belongs to an earlier state of {file}, which was saved since. It was left where it "
     "is."},
    {"files/journal-unwritable",
     "Unsaved work cannot be recorded in {file}: {why}. Save often, and check the disk and its permissions."},
}};

}  // namespace

std::span<const Words> filesWords() {
    return kWords;
}

}  // namespace crosstick::app
