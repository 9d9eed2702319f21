// Faults of the ground: said at the window's foot until they are mended or put away.
#include <QFileDialog>

#include "core/sheets/faults.h"
#include "core/sheets/sheet_file.h"
#include "ui/table/hand_words.h"
#include "ui/window/faults.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

using work::Course;
using work::GivingUp;
using work::Lane;

constexpr const char* kGrid = "grid";
constexpr const char* kHeights = "heights";
constexpr const char* kSheet = "sheet";

/// Relative to the plan's folder where it lies inside it.
std::string pathFrom(const std::filesystem::path& folder, const std::filesystem::path& file) {
    const auto relative = file.lexically_proximate(folder);
    return relative.is_absolute() || relative.begin()->string() == ".." ? file.string() : relative.string();
}

/// A sheet at its new place, if it is the same: the films lie on its raster. Heights that moved along come, too.
Result<plan::Sheet> foundSheet(const plan::Sheet& sheet, const std::filesystem::path& file,
                               const std::filesystem::path& folder) {
    const auto seen = sheets::describeSheet(file, sheet.id, sheet.scale);
    if (!seen) {
        return tl::unexpected(seen.error());
    }
    if (seen->columns != sheet.columns || seen->rows != sheet.rows || !(seen->placement == sheet.placement)) {
        return fail(kOtherSheet, {{"file", file.string()}, {"name", sheet.name}});
    }
    plan::Sheet found = sheet;
    found.path = pathFrom(folder, file);
    const std::filesystem::path heights = sheet.elevationPath;
    std::error_code ignored;
    if (!heights.empty() && !std::filesystem::exists(folder / heights, ignored)) {
        if (const auto beside = file.parent_path() / heights.filename(); std::filesystem::exists(beside, ignored)) {
            found.elevationPath = pathFrom(folder, beside);
        }
    }
    return found;
}

plan::Plan withSheet(const plan::Plan& plan, plan::Sheet sheet) {
    plan::PlanBuilder builder(plan);
    builder.put(std::move(sheet));
    return std::move(builder).build();
}

}  // namespace

std::filesystem::path Window::sheetFile() const {
    const auto& sheets = work_.committed().sheets();
    return sheets.empty() ? std::filesystem::path() : table::besideFolder(work_.folder(), sheets.front()->path);
}

/// Grid and heights as the work knows them; the sheet is laid anew where its file is another now.
void Window::renewGround() {
    const Notices::Deed again{tr("Look again"), [this] { work_.lookAtGround(); }};
    if (const auto& fault = work_.gridFault()) {
        notices_->keep(kGrid, tr("No grid, so nothing can be measured: %1").arg(outside_.say(*fault)), {again});
    } else {
        notices_->mend(kGrid);
    }
    if (const auto& fault = work_.heightsFault()) {
        notices_->keep(kHeights, tr("No heights, so climb stays unknown: %1").arg(outside_.say(*fault)),
                       {again, {tr("Say where they are..."), [this] { findHeights(); }}});
    } else if (!work_.isReadingHeights()) {
        notices_->mend(kHeights);
    }
    if (const auto file = sheetFile(); file != laidSheet_) {
        laidSheet_ = file;
        notices_->mend(kSheet);
        table_->setTheme(light_ == look::Light::Night ? table::Theme::Night : table::Theme::Day);
    } else if (!notices_->kept(kSheet).isEmpty()) {
        checkSheet(std::nullopt);
    }
}

/// The table says only that the raster failed: what is wrong with it is found out on another thread.
/// @param told  the table's fault, if it is the table that asks
void Window::checkSheet(std::optional<FaultId> told) {
    const auto file = sheetFile();
    if (checksSheet_ || file.empty()) {
        return;
    }
    checksSheet_ = true;
    work_.errands().run(
        Lane::Makings, tr("Looking at the sheet"), GivingUp::Allowed,
        [file](Course&) -> Result<void> {
            const auto raster = sheets::Raster::open(file);
            return raster ? Result<void>{} : tl::unexpected(raster.error());
        },
        [this, file, told](Result<void> seen) {
            checksSheet_ = false;
            if (file != sheetFile()) {
                return;
            }
            if (seen && told) {  // it opens, yet a part of it cannot be read
                seen = fail(*told, {{"file", file.string()}, {"why", tr("a part of it").toStdString()}});
            }
            if (seen) {
                notices_->mend(kSheet);
                table_->setTheme(light_ == look::Light::Night ? table::Theme::Night : table::Theme::Day);
                return;
            }
            notices_->keep(kSheet, tr("The map sheet is not shown: %1").arg(outside_.say(seen.error())),
                           {{tr("Look again"), [this] { checkSheet(std::nullopt); }},
                            {tr("Say where it is..."), [this] { findSheet(); }}});
        },
        [this] { checksSheet_ = false; });
}

void Window::findSheet() {
    const QString chosen =
        QFileDialog::getOpenFileName(this, tr("Where is the map sheet?"),
                                     QString::fromStdString(work_.folder().string()), tr("Map sheets (*.tif *.tiff)"));
    if (!chosen.isEmpty()) {
        sheetIsAt(chosen.toStdString());
    }
}

void Window::sheetIsAt(const std::filesystem::path& file) {
    if (work_.committed().sheets().empty()) {
        return;
    }
    const plan::SheetPtr sheet = work_.committed().sheets().front();
    work_.errands().run(
        Lane::Makings, tr("Reading %1").arg(QString::fromStdString(file.filename().string())), GivingUp::Allowed,
        [sheet, file, folder = work_.folder()](Course&) { return foundSheet(*sheet, file, folder); },
        [this](Result<plan::Sheet> found) {
            if (!found) {
                say(outside_.say(found.error()));
            } else if (work_.committed().sheet(found->id)) {
                say({});
                work_.commit(withSheet(work_.committed(), std::move(*found)), "find the sheet");
            }
        });
}

void Window::findHeights() {
    const QString chosen = QFileDialog::getOpenFileName(this, tr("Where is the height model?"),
                                                        QString::fromStdString(work_.folder().string()),
                                                        tr("Height models (*.tif *.tiff)"));
    if (chosen.isEmpty() || work_.committed().sheets().empty()) {
        return;
    }
    plan::Sheet sheet = *work_.committed().sheets().front();
    sheet.elevationPath = pathFrom(work_.folder(), chosen.toStdString());
    work_.commit(withSheet(work_.committed(), std::move(sheet)), "find the heights");
}

}  // namespace crosstick::window
