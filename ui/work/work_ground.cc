// The ground under the plan: its grid and its heights, and why one of them is not there.
#include "core/files/carried_files.h"
#include "ui/work/faults.h"
#include "ui/work/work.h"

namespace crosstick::work {
namespace {

/// The CRS that the grid of the work lies in.
std::string gridOf(const plan::Plan& plan) {
    return plan.sheets().empty() ? plan.planeCrs() : plan.sheets().front()->crs;
}

}  // namespace

sheets::FileFinder Work::finder() const {
    return [plan = file_, folder = folder_, into = order_.reader.cache().folder() / "carried"](
               const std::string& path) { return files::readableFile(plan, folder, path, into); };
}

void Work::openGrid(Result<movement::WorkGrid> grid) {
    grid_.reset();
    pieces_.clear();
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
    pieces_.clear();
    heightsFault_.reset();
    const sheets::HeightsNamed named = sheets::heightsNamedIn(committed());
    readsHeights_ = !named.path.empty();
    if (named.path.empty()) {
        return;
    }
    errands_.run(
        Lane::Makings, tr("Reading the heights"), GivingUp::Allowed,
        [plan = committed(), find = finder(), reader = order_.reader](Course& course) {
            sheets::Watch watch;
            watch.isStopped = [&course] { return course.isStopped(); };
            watch.tell = [&course](sheets::messages::Progress progress) { course.tell(progress.done, progress.of); };
            return sheets::heightsOf(plan, find, reader, watch);
        },
        [this, round](Result<std::shared_ptr<const sheets::Elevation>> read) {
            if (round == heightsRound_) {
                takeHeights(std::move(read));
            }
        },
        [this, round, file = sheets::fromFolder(folder_, named.path)] {
            if (round == heightsRound_) {
                takeHeights(fail(kHeightsGivenUp, {{"file", file.string()}}));
            }
        });
}

void Work::takeHeights(Result<std::shared_ptr<const sheets::Elevation>> read) {
    readsHeights_ = false;
    pieces_.clear();
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
    sheetGrounds_.layFaultyAgain();
    Q_EMIT groundChanged();
}

void Work::laySheets() {
    sheetGrounds_.lay(committed().sheets(), folder_, finder());
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
    if (otherPlane || !(sheets::heightsNamedIn(before) == sheets::heightsNamedIn(now))) {
        readHeights();
    }
    if (&before.sheets() != &now.sheets()) {
        laySheets();
        Q_EMIT groundChanged();
    }
}

}  // namespace crosstick::work
