// Faults of the ground: said at the window's foot until they are mended or put away.
#include <QFileDialog>
#include <QSettings>

#include "core/sheets/faults.h"
#include "core/sheets/find_again.h"
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
constexpr const char* kDatum = "datum";
constexpr std::size_t kMostTold = 8;  // sheets of a plan whose faults are told at once

/// "sheet", "sheet 2": what a notice is about.
std::string about(const char* what, std::size_t place) {
    return place == 0 ? what : std::string(what) + ' ' + std::to_string(place + 1);
}

/// Relative to the plan's folder where it lies inside it.
std::string pathFrom(const std::filesystem::path& folder, const std::filesystem::path& file) {
    const auto relative = file.lexically_proximate(folder);
    return relative.is_absolute() || relative.begin()->string() == ".." ? file.string() : relative.string();
}

/// A sheet at its new place, if it is the same: the films lie on its raster. Heights that moved along come, too.
Result<plan::Sheet> foundSheet(const sheets::ForeignReader& reader, const plan::Sheet& sheet,
                               const std::filesystem::path& file, const std::filesystem::path& folder) {
    const auto seen = sheets::describeSheet(reader, file, sheet.id, {sheet.scale, sheet.crs});
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

/// Grid, heights and sheet as the work knows them.
void Window::renewGround() {
    if (const auto& fault = work_.gridFault()) {
        notices_->keep(kGrid, tr("No grid, so nothing can be measured: %1").arg(outside_.say(*fault)), {lookAgain()});
    } else {
        notices_->mend(kGrid);
    }
    tellOfHeights();
    tellOfSheet();
    tellOfDatum();
    tellOfSeams();
}

Notices::Deed Window::lookAgain() {
    return {tr("Look again"), [this] { work_.lookAtGround(); }};
}

void Window::tellOfHeights() {
    const auto& fault = work_.heightsFault();
    if (fault && fault->fault == sheets::kHeightUnit) {
        notices_->keep(kHeights, tr("The height model does not say in what it counts. What does the sheet print?"),
                       {{tr("Metres"), [this] { setHeightUnit(plan::HeightUnit::Metre); }},
                        {tr("Feet"), [this] { setHeightUnit(plan::HeightUnit::Foot); }}});
    } else if (fault) {
        notices_->keep(kHeights, tr("No heights, so climb stays unknown: %1").arg(outside_.say(*fault)),
                       {lookAgain(), {tr("Say where they are..."), [this] { findHeights(); }}});
    } else if (!work_.isReadingHeights()) {
        notices_->mend(kHeights);
    }
}

void Window::tellOfSheet() {
    for (std::size_t n = 0; n < kMostTold; ++n) {
        const auto& sheets = work_.committed().sheets();
        const plan::SheetPtr sheet = n < sheets.size() ? sheets[n] : nullptr;
        const work::SheetGround* ground = sheet ? work_.sheetGrounds().of(sheet->id) : nullptr;
        if (ground == nullptr || !ground->fault()) {
            notices_->mend(about(kSheet, n));
            continue;
        }
        if (ground->fault()->fault == sheets::kFileMissing) {
            seekSheet(sheet);
        }
        notices_->keep(about(kSheet, n), tr("The map sheet is not shown: %1").arg(outside_.say(*ground->fault())),
                       {lookAgain(), {tr("Say where it is..."), [this, id = sheet->id] { findSheet(id); }}});
    }
}

/// How good the way from an old datum is, where a better one is known: the leader decides whether it is good enough.
void Window::tellOfDatum() {
    const auto metres = [](const std::optional<Metres>& accuracy) {
        return accuracy ? QLocale::c().toString(accuracy->value(), 'g', 3) + QStringLiteral(" m")
                        : tr("an accuracy that is not stated");
    };
    for (std::size_t n = 0; n < kMostTold; ++n) {
        const auto& sheets = work_.committed().sheets();
        if (n >= sheets.size() || sheets[n]->datumShift.betterGrid.empty()) {
            notices_->mend(about(kDatum, n));
            continue;
        }
        const plan::DatumShift& shift = sheets[n]->datumShift;
        notices_->keep(
            about(kDatum, n),
            tr("%1 to WGS 84 goes by \"%2\", good to %3; %4 would be had with the grid file %5, which is not "
               "installed.")
                .arg(QString::fromStdString(sheets[n]->datum), QString::fromStdString(shift.name),
                     metres(shift.accuracy), metres(shift.betterAccuracy), QString::fromStdString(shift.betterGrid)),
            {});
    }
}

/// The same file may lie elsewhere: beside the plan, below where it was, or beside other plans. It is looked for once.
void Window::seekSheet(const plan::SheetPtr& sheet) {
    const std::filesystem::path gone = sheets::fromFolder(work_.folder(), sheet->path);
    if (!sought_.insert(gone).second) {
        return;
    }
    std::vector<std::filesystem::path> folders{work_.folder(), gone.parent_path()};
    for (const QString& file : settings_->value(QStringLiteral("recent/files")).toStringList()) {
        folders.push_back(std::filesystem::path(file.toStdString()).parent_path());
    }
    work_.errands().run(
        Lane::Makings, tr("Looking for the map sheet"), GivingUp::Allowed,
        [sheet, folders](Course& course) {
            return sheets::findAgain(*sheet, folders, [&course] { return course.isStopped(); });
        },
        [this, sheet, gone](const std::filesystem::path& found) {
            const work::SheetGround* ground = work_.sheetGrounds().of(sheet->id);
            if (!found.empty() && ground != nullptr && ground->file() == gone && ground->fault()) {
                sheetIsAt(found, sheet->id);
            }
        });
}

void Window::findSheet(const plan::SheetId& sheet) {
    const QString chosen = QFileDialog::getOpenFileName(this, tr("Where is the map sheet?"),
                                                        QString::fromStdString(work_.folder().string()), sheetKinds());
    if (!chosen.isEmpty()) {
        sheetIsAt(chosen.toStdString(), sheet);
    }
}

void Window::sheetIsAt(const std::filesystem::path& file, std::optional<plan::SheetId> which) {
    const auto& sheets = work_.committed().sheets();
    const plan::SheetPtr sheet = which ? work_.committed().sheet(*which) : sheets.empty() ? nullptr : sheets.front();
    if (!sheet) {
        return;
    }
    work_.errands().run(
        Lane::Makings, tr("Reading %1").arg(QString::fromStdString(file.filename().string())), GivingUp::Allowed,
        [sheet, file, folder = work_.folder(), reader = work_.reader()](Course&) {
            return foundSheet(reader, *sheet, file, folder);
        },
        [this](Result<plan::Sheet> found) {
            if (!found) {
                say(outside_.say(found.error()));
            } else if (work_.committed().sheet(found->id)) {
                say({});
                work_.commit(withSheet(work_.committed(), std::move(*found)), "find the sheet");
            }
        });
}

void Window::setHeightUnit(plan::HeightUnit unit) {
    if (work_.committed().sheets().empty()) {
        return;
    }
    plan::Sheet sheet = *work_.committed().sheets().front();
    sheet.elevationUnit = unit;
    work_.commit(withSheet(work_.committed(), std::move(sheet)), "say what heights count in");
}

void Window::findHeights() {
    const QString chosen = QFileDialog::getOpenFileName(
        this, tr("Where is the height model?"), QString::fromStdString(work_.folder().string()),
        tr("Height models (*.tif *.tiff *.dt0 *.dt1 *.dt2 *.hgt *.asc);;All files (*)"));
    if (chosen.isEmpty() || work_.committed().sheets().empty()) {
        return;
    }
    plan::Sheet sheet = *work_.committed().sheets().front();
    sheet.elevationPath = pathFrom(work_.folder(), chosen.toStdString());
    work_.commit(withSheet(work_.committed(), std::move(sheet)), "find the heights");
}

}  // namespace crosstick::window
