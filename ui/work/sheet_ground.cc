#include "ui/work/sheet_ground.h"

#include <QPointer>

#include "core/sheets/faults.h"
#include "core/sheets/raster.h"
#include "ui/work/faults.h"

namespace crosstick::work {
namespace {

/// A copy of the size that the plan knows: films are tied to its pixels.
Result<std::filesystem::path> fitting(const std::filesystem::path& copy, const std::filesystem::path& file, int columns,
                                      int rows) {
    const auto raster = sheets::Raster::open(copy);
    if (!raster) {
        return tl::unexpected(raster.error());
    }
    if (raster->columns() != columns || raster->rows() != rows) {
        return fail(sheets::kOtherSize, {{"file", file.string()},
                                         {"columns", std::int64_t{raster->columns()}},
                                         {"rows", std::int64_t{raster->rows()}}});
    }
    return copy;
}

}  // namespace

SheetGround::SheetGround(Errands& errands, const sheets::ForeignReader& reader) : errands_(errands), reader_(reader) {}

void SheetGround::lay(const plan::SheetPtr& sheet, const std::filesystem::path& folder, sheets::FileFinder finder) {
    const auto file = sheet ? sheets::fromFolder(folder, sheet->path) : std::filesystem::path();
    const bool same = file == file_ && (!sheet || (sheet->columns == columns_ && sheet->rows == rows_));
    if (same && !fault_) {
        return;
    }
    file_ = file;
    path_ = sheet ? sheet->path : std::string();
    finder_ = std::move(finder);
    columns_ = sheet ? sheet->columns : 0;
    rows_ = sheet ? sheet->rows : 0;
    threwAway_ = false;
    layAgain();
}

void SheetGround::layAgain() {
    ++round_;
    copy_.clear();
    glance_.reset();
    fault_.reset();
    reads_ = !file_.empty();
    if (reads_) {
        read();
    }
    Q_EMIT changed();
}

void SheetGround::copyIsDamaged() {
    if (copy_.empty()) {
        return;
    }
    if (threwAway_) {
        copy_.clear();
        fault_ = Error{sheets::kDamaged, {{"file", file_.string()}, {"why", tr("its copy").toStdString()}}};
        Q_EMIT changed();
        return;
    }
    threwAway_ = true;
    spoilt_ = copy_;
    layAgain();
}

void SheetGround::read() {
    const int round = round_;
    // The ground may be gone when an answer comes: whoever answers asks the window's thread whether it is still there.
    const QPointer<SheetGround> self(this);
    const auto make = [self, round, file = file_, path = path_, find = finder_, spoilt = std::exchange(spoilt_, {}),
                       columns = columns_, rows = rows_,
                       reader = reader_](Course& course) -> Result<std::filesystem::path> {
        sheets::Watch watch;
        watch.isStopped = [&course] { return course.isStopped(); };
        watch.tell = [&course](sheets::messages::Progress progress) { course.tell(progress.done, progress.of); };
        watch.show = [self, round, &course](const sheets::Pixels& picture) {
            course.meanwhile([self, round, seen = std::make_shared<const sheets::Pixels>(picture)] {
                if (self && round == self->round_ && self->copy_.empty()) {
                    self->glance_ = seen;
                    Q_EMIT self->changed();
                }
            });
        };
        std::error_code ignored;
        if (!spoilt.empty()) {
            std::filesystem::remove(spoilt, ignored);
        }
        const auto source = find(path);
        auto copy = reader.sheet(source, watch);
        if (copy && !sheets::Raster::open(*copy)) {  // spoilt since it was made
            std::filesystem::remove(*copy, ignored);
            copy = reader.sheet(source, watch);
        }
        return copy ? fitting(*copy, file, columns, rows) : copy;
    };
    errands_.run(
        Lane::Makings, tr("Preparing the map sheet"), GivingUp::Allowed, make,
        [self, round](Result<std::filesystem::path> copy) {
            if (self && round == self->round_) {
                self->take(std::move(copy));
            }
        },
        [self, round, file = file_] {
            if (self && round == self->round_) {
                self->take(fail(kSheetGivenUp, {{"file", file.string()}}));
            }
        });
}

void SheetGround::take(Result<std::filesystem::path> copy) {
    reads_ = false;
    if (copy) {
        copy_ = std::move(*copy);
        glance_.reset();
    } else {
        fault_ = copy.error();
    }
    Q_EMIT changed();
}

}  // namespace crosstick::work
