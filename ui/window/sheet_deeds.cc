// The plan's map sheets: more of them, and where their maps end.
#include <array>
#include <cmath>

#include <QFileDialog>

#include "core/film/registration.h"
#include "core/geodesy/faults.h"
#include "core/sheets/neatline.h"
#include "core/sheets/seams.h"
#include "ui/tools/neatline_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

using work::Course;
using work::GivingUp;
using work::Lane;

constexpr const char* kSeams = "seams";

QString nameOf(const plan::Sheet& sheet) {
    const std::string name = sheet.name.empty() ? std::filesystem::path(sheet.path).stem().string() : sheet.name;
    return QString::fromStdString(sheet.number.empty() ? name : sheet.number + " " + name);
}

plan::Plan withSheet(const plan::Plan& plan, plan::Sheet sheet) {
    plan::PlanBuilder builder(plan);
    builder.put(std::move(sheet));
    return std::move(builder).build();
}

constexpr Metres kSpan{10000};

/// "400.4 399.8", where each ought to be so long.
std::optional<plan::PaperStretch> stretchTyped(const QString& typed, double due) {
    const QStringList parts = typed.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (parts.size() != 2) {
        return std::nullopt;
    }
    std::array<double, 2> percent{};
    for (std::size_t n = 0; n < percent.size(); ++n) {
        bool isNumber = false;
        QString part = parts[static_cast<qsizetype>(n)];
        percent[n] = (part.replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&isNumber) / due - 1) * 100;
        if (!isNumber || !(std::abs(percent[n]) <= plan::kMostStretchPercent)) {
            return std::nullopt;
        }
    }
    return plan::PaperStretch{percent[0], percent[1]};
}

/// The ends of a sheet's map, read from our copy of it, which is made first if need be.
Result<std::vector<plan::RasterSpot>> neatlineOf(const plan::Sheet& sheet, const std::filesystem::path& file,
                                                 const sheets::ForeignReader& reader, Course& course) {
    sheets::Watch watch;
    watch.isStopped = [&course] { return course.isStopped(); };
    watch.tell = [&course](sheets::messages::Progress progress) { course.tell(progress.done, progress.of); };
    return reader.sheet(file, watch)
        .and_then([](const std::filesystem::path& copy) { return sheets::Raster::open(copy); })
        .and_then([&](const sheets::Raster& raster) {
            return sheets::proposeNeatline(raster, sheet, film::gridInterval(sheet.scale));
        });
}

/// "1:25 000, WGS 84"; where a datum is brought over, how and how well.
QString factsOf(const plan::Sheet& sheet) {
    QString scale = QString::number(sheet.scale.denominator, 'f', 0);
    for (qsizetype at = scale.size() - 3; at > 0; at -= 3) {
        scale.insert(at, QLatin1Char(' '));
    }
    QString facts = QStringLiteral("1:") + scale + QStringLiteral(", ") + QString::fromStdString(sheet.datum);
    if (!sheet.datumShift.name.empty()) {
        facts += QStringLiteral(" (") + QString::fromStdString(sheet.datumShift.name);
        facts += sheet.datumShift.accuracy
                     ? QStringLiteral(", %1 m)").arg(QLocale::c().toString(sheet.datumShift.accuracy->value(), 'g', 3))
                     : QStringLiteral(")");
    }
    return facts;
}

}  // namespace

void Window::askForSheetBeside() {
    if (!work_.isOpen()) {
        return askForSheet();
    }
    const QString file = QFileDialog::getOpenFileName(this, tr("Lay one more map sheet"),
                                                      QString::fromStdString(work_.folder().string()), sheetKinds());
    if (!file.isEmpty()) {
        layBeside(file.toStdString());
    }
}

void Window::layBeside(const std::filesystem::path& file, const sheets::GivenFacts& given) {
    readSheet(file, given,
              [this](const std::filesystem::path& read, plan::Sheet sheet) { addSheet(read, std::move(sheet)); });
}

void Window::addSheet(const std::filesystem::path& file, plan::Sheet sheet) {
    for (const plan::SheetPtr& other : work_.committed().sheets()) {
        if (!sheet.sha256.empty() && other->sha256 == sheet.sha256) {
            return say(tr("%1 lies in the plan already.").arg(nameOf(*other)));
        }
    }
    sheet.path = std::filesystem::absolute(file).string();
    sheet.elevationPath.clear();  // heights are those of the first
    if (sheet.asFilm) {           // it has no collar, and joins nothing
        return work_.commit(withSheet(work_.committed(), std::move(sheet)), "lay somebody's film over the map");
    }
    std::vector<plan::SheetId> whole{sheet.id};
    for (const plan::SheetPtr& other : work_.committed().sheets()) {
        if (other->neatline.empty()) {
            whole.push_back(other->id);
        }
    }
    work_.commit(withSheet(work_.committed(), std::move(sheet)), "lay one more sheet");
    for (const plan::SheetId& id : whole) {
        cropAtNeatline(id);
    }
}

void Window::cropAtNeatline(const plan::SheetId& id) {
    const plan::SheetPtr sheet = work_.committed().sheet(id);
    if (!sheet) {
        return;
    }
    work_.errands().run(
        Lane::Makings, tr("Looking where the map of %1 ends").arg(nameOf(*sheet)), GivingUp::Allowed,
        [sheet, find = work_.finder(), reader = work_.reader()](Course& course) {
            return neatlineOf(*sheet, find(sheet->path), reader, course);
        },
        [this, id](Result<std::vector<plan::RasterSpot>> corners) {
            const plan::SheetPtr now = work_.committed().sheet(id);
            if (!now) {
                return;
            }
            if (!corners) {
                return say(nameOf(*now) + QStringLiteral(": ") + outside_.say(corners.error()));
            }
            plan::Sheet cropped = *now;
            cropped.neatline = std::move(*corners);
            work_.commit(withSheet(work_.committed(), std::move(cropped)), "crop the sheet at its map's edge");
        });
}

void Window::holdNeatline(const plan::SheetId& id) {
    const plan::SheetPtr sheet = work_.committed().sheet(id);
    auto way = sheet ? geodesy::PlaneLink::between(sheet->crs, work_.committed().planeCrs())
                     : Result<geodesy::PlaneLink>(fail(geodesy::kNoTransformation));
    if (!way) {
        return sheet ? say(outside_.say(way.error())) : void();
    }
    const auto link = std::make_shared<const geodesy::PlaneLink>(std::move(*way));
    say({});
    work_.select(std::nullopt);
    detailsWanted_ = false;
    arrange();
    const tools::RasterWays ways{
        [link, placement = sheet->placement](geodesy::PlanePoint inPlan) {
            return link->inverse(inPlan).map([&](geodesy::PlanePoint own) { return plan::inRaster(placement, own); });
        },
        [link, placement = sheet->placement](plan::RasterSpot spot) {
            return link->forward(plan::onGrid(placement, spot.column, spot.row));
        }};
    table_->setTool(std::make_unique<tools::NeatlineTool>(id, ways));
    table_->showCollar(id);
    table_->setFocus();
}

void Window::showAllOf(const plan::SheetId& id) {
    if (const plan::SheetPtr sheet = work_.committed().sheet(id)) {
        plan::Sheet whole = *sheet;
        whole.neatline.clear();
        work_.commit(withSheet(work_.committed(), std::move(whole)), "show the sheet with its collar");
    }
}

/// @param strength  over the maps; none: a map sheet among them
void Window::layAsFilm(const plan::SheetId& id, std::optional<double> strength) {
    if (const plan::SheetPtr sheet = work_.committed().sheet(id); sheet && sheet->asFilm != strength) {
        plan::Sheet changed = *sheet;
        changed.asFilm = strength;
        work_.commit(withSheet(work_.committed(), std::move(changed)),
                     strength ? "lay it as a film over the maps" : "lay it as a map sheet");
    }
}

void Window::takeAway(const plan::SheetId& id) {
    plan::PlanBuilder builder(work_.committed());
    builder.removeSheet(id);
    work_.commit(std::move(builder).build(), "take a sheet away");
}

/// From two spans measured on the paper in hand; nothing typed: films are printed exactly to scale again.
void Window::askForStretch() {
    if (!work_.isOpen() || work_.committed().sheets().empty()) {
        return say(tr("Films are fitted to the paper of a map sheet: lay one first."));
    }
    const plan::Sheet& sheet = *work_.committed().sheets().front();
    const double due = kSpan.value() / sheet.scale.denominator * 1000;
    const plan::PaperStretch now = sheet.stretch.value_or(plan::PaperStretch{});
    const auto spans = [due](const plan::PaperStretch& stretch) {
        return QStringLiteral("%1 %2").arg(QString::number(due * (1 + stretch.eastPercent / 100), 'f', 1),
                                           QString::number(due * (1 + stretch.northPercent / 100), 'f', 1));
    };
    question_->ask(
        tr("%1 km of the grid on your paper, in mm, to the east and to the north (true: %2; empty: exactly to scale):")
            .arg(kSpan.value() / 1000)
            .arg(QString::number(due, 'f', 1)),
        sheet.stretch ? spans(now) : QString(),
        [this, due, id = sheet.id](const QString& typed) -> std::optional<QString> {
            const plan::SheetPtr held = work_.committed().sheet(id);
            const auto stretch = stretchTyped(typed, due);
            if (!stretch && !typed.trimmed().isEmpty()) {
                return tr("Two lengths in mm, such as %1 %1, no more than 5 per cent off.")
                    .arg(QString::number(due, 'f', 1));
            }
            if (held) {
                plan::Sheet fitted = *held;
                fitted.stretch = stretch;
                work_.commit(withSheet(work_.committed(), std::move(fitted)), "fit films to the paper");
                say(stretch ? tr("Films fit that paper now, and say so in their block.")
                            : tr("Films are printed exactly to scale."));
            }
            return std::nullopt;
        });
}

/// One entry for each sheet, made anew whenever the menu opens.
void Window::fillSheetsMenu() {
    for (QAction* action : sheetsMenu_->actions()) {
        if (action->menu() != nullptr && action->menu()->parent() == sheetsMenu_) {
            action->menu()->deleteLater();
            sheetsMenu_->removeAction(action);
        }
    }
    if (work_.isOpen()) {
        for (const plan::SheetPtr& sheet : work_.committed().sheets()) {
            fillSheetMenu(*sheetsMenu_->addMenu(nameOf(*sheet)), *sheet);
        }
    }
}

void Window::fillSheetMenu(QMenu& menu, const plan::Sheet& sheet) {
    const plan::SheetId id = sheet.id;
    menu.addAction(factsOf(sheet))->setEnabled(false);
    menu.addSeparator();
    menu.addAction(tr("Crop where its grid ends"), this, [this, id] { cropAtNeatline(id); });
    menu.addAction(tr("Edge of its map by hand"), this, [this, id] { holdNeatline(id); });
    menu.addAction(tr("Show its collar"), this, [this, id] { showAllOf(id); })->setEnabled(!sheet.neatline.empty());
    menu.addAction(tr("Register it anew, from its marks"), this, [this, id] { registerAnew(id); })
        ->setEnabled(!sheet.marks.empty());
    if (sheet.asFilm) {
        menu.addAction(tr("Its ticks for all films of the plan"), this, [this, id] { takeTicksOf(id); })
            ->setEnabled(!sheet.marks.empty());
    }
    if (work_.committed().sheets().front()->id != id) {
        QMenu* film = menu.addMenu(tr("As a film over the maps"));
        for (const int percent : {100, 75, 50, 25}) {
            QAction* strength = film->addAction(tr("%1 % strong").arg(percent), this,
                                                [this, id, percent] { layAsFilm(id, percent / 100.0); });
            strength->setCheckable(true);
            strength->setChecked(sheet.asFilm == percent / 100.0);
        }
        film->addAction(tr("No: it is a map"), this, [this, id] { layAsFilm(id, std::nullopt); })
            ->setEnabled(sheet.asFilm.has_value());
    }
    QAction* away = menu.addAction(tr("Take it away"), this, [this, id] { takeAway(id); });
    // The first sheet's grid is that of films and figures.
    away->setEnabled(work_.committed().sheets().front()->id != id);
}

/// Sheets that ought to join and do not: the table shows where, this says how much.
void Window::tellOfSeams() {
    const auto seams = work_.isOpen() ? sheets::seamsOf(work_.committed())
                                      : Result<std::vector<sheets::Seam>>(std::vector<sheets::Seam>{});
    QStringList words;
    for (const sheets::Seam& seam : seams.value_or(std::vector<sheets::Seam>{})) {
        if (!seam.meets()) {
            words.push_back(tr("%1 and %2: %3 m %4")
                                .arg(nameOf(*work_.committed().sheet(seam.one)),
                                     nameOf(*work_.committed().sheet(seam.other)),
                                     QString::number(std::abs(seam.offset.value()), 'f', 0),
                                     seam.offset > Metres(0) ? tr("missing") : tr("overlap")));
        }
    }
    if (words.isEmpty()) {
        notices_->mend(kSeams);
    } else {
        notices_->keep(kSeams, tr("Sheets do not meet. %1.").arg(words.join(QStringLiteral("; "))), {});
    }
}

}  // namespace crosstick::window
