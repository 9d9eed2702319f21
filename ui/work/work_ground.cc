// The ground under the plan: its grid and its heights, and why one of them is not there.
#include "ui/work/faults.h"
#include "ui/work/work.h"

namespace crosstick::work {
namespace {

std::filesystem::path heightsFileOf(const plan::Plan& plan, const std::filesystem::path& folder) {
    if (plan.sheets().empty() || plan.sheets().front()->elevationPath.empty()) {
        return {};
    }
    const std::filesystem::path path = plan.sheets().front()->elevationPath;
    return path.is_absolute() ? path : folder / path;
}

/// The CRS that the grid of the work lies in.
std::string gridOf(const plan::Plan& plan) {
    return plan.sheets().empty() ? plan.planeCrs() : plan.sheets().front()->crs;
}

}  // namespace

std::filesystem::path Work::heightsFile() const {
    return heightsFileOf(committed(), folder_);
}

void Work::openGrid(Result<movement::WorkGrid> grid) {
    grid_.reset();
    gridFault_.reset();
    if (grid) {
        grid_.emplace(std::move(*grid));
    } else {
        gridFault_ = grid.error();
    }
}

void Work::readHeights() {
    const int round = ++heightsRound_;
    heights_.reset();
    heightsFault_.reset();
    const std::filesystem::path file = heightsFile();
    readsHeights_ = !file.empty();
    if (file.empty()) {
        return;
    }
    errands_.run(
        Lane::Makings, tr("Reading the heights"), GivingUp::Allowed,
        [file, plane = committed().planeCrs()](Course&) { return sheets::Elevation::open(file, plane); },
        [this, round](Result<std::shared_ptr<const sheets::Elevation>> read) {
            if (round == heightsRound_) {
                takeHeights(std::move(read));
            }
        },
        [this, round, file] {
            if (round == heightsRound_) {
                takeHeights(fail(kHeightsGivenUp, {{"file", file.string()}}));
            }
        });
}

void Work::takeHeights(Result<std::shared_ptr<const sheets::Elevation>> read) {
    readsHeights_ = false;
    if (read) {
        heights_ = std::move(*read);
    } else {
        heightsFault_ = read.error();
    }
    if (history_) {
        renewFigures(plan::Plan{});
        Q_EMIT planChanged();
        Q_EMIT groundChanged();
    }
}

void Work::lookAtGround() {
    if (!history_) {
        return;
    }
    if (gridFault_) {
        openGrid(movement::WorkGrid::of(committed()));
        renewFigures(plan::Plan{});
        Q_EMIT planChanged();
    }
    if (heightsFault_) {
        readHeights();
    }
    Q_EMIT groundChanged();
}

void Work::keepGround(const plan::Plan& before) {
    const plan::Plan& now = committed();
    if (&before.sheets() == &now.sheets() && &before.heading() == &now.heading()) {
        return;
    }
    const bool otherPlane = before.planeCrs() != now.planeCrs();
    if (otherPlane || gridOf(before) != gridOf(now)) {
        openGrid(movement::WorkGrid::of(now));
    }
    if (otherPlane || heightsFileOf(before, folder_) != heightsFile()) {
        readHeights();
    }
    if (&before.sheets() != &now.sheets()) {
        Q_EMIT groundChanged();
    }
}

}  // namespace crosstick::work
