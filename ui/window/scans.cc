// Scans and photos that do not say where they lie.
#include <QFileDialog>

#include "core/film/registration_edits.h"
#include "ui/window/window.h"

namespace crosstick::window {

using work::Course;
using work::GivingUp;
using work::Lane;

void Window::askForScan() {
    const QString file = QFileDialog::getOpenFileName(this, tr("Register a scan or photo"), {}, sheetKinds());
    if (!file.isEmpty()) {
        registerScan(file.toStdString());
    }
}

void Window::registerScan(const std::filesystem::path& file, const sheets::GivenFacts& given,
                          const plan::SheetPtr& before) {
    say({});
    const Uuid id = before ? before->id : work_.newId();
    work_.errands().run(
        Lane::Makings, tr("Reading %1").arg(QString::fromStdString(file.filename().string())), GivingUp::Allowed,
        [file, reader = work_.reader()](Course& course) {
            sheets::Watch watch;
            watch.isStopped = [&course] { return course.isStopped(); };
            return reader.inspect(file, watch);
        },
        [this, file, given, id, before](const Result<sheets::FileReport>& report) {
            if (!report) {
                return say(outside_.say(report.error()));
            }
            if (pages_->currentWidget() != register_.made()) {
                beforeRegister_ = pages_->currentWidget();
            }
            pages_->setCurrentWidget(&*register_);
            register_->open(file, *report, given, id, before ? before->marks : std::vector<plan::GridMark>{});
            register_->setPurpose(beforeRegister_ == desk_ && work_.isOpen() && !before
                                      ? registering::Purpose::JoinsAPlan
                                      : registering::Purpose::BeginsAPlan);
        });
}

/// From the marks that the plan kept: one more, or one that was wrong, and the sheet lies better.
void Window::registerAnew(const plan::SheetId& id) {
    const plan::SheetPtr sheet = work_.committed().sheet(id);
    if (!sheet) {
        return;
    }
    work_.errands().run(
        Lane::Makings, tr("Looking for %1").arg(QString::fromStdString(sheet->path)), GivingUp::Allowed,
        [find = work_.finder(), path = sheet->path](Course&) { return find(path); },
        [this, sheet](const std::filesystem::path& file) {
            registerScan(file, {sheet->scale, sheet->crs}, sheet);
        });
}

void Window::leaveRegister() {
    if (pages_->currentWidget() == register_.made()) {
        pages_->setCurrentWidget(beforeRegister_ != nullptr ? beforeRegister_ : &*start_);
    }
}

/// With a plan on the table the sheet joins the others, or lies anew; else it begins one.
void Window::laidByHand(const std::filesystem::path& file, const plan::Sheet& sheet) {
    const bool joins = beforeRegister_ == desk_ && work_.isOpen();
    leaveRegister();
    if (const plan::SheetPtr before = joins ? work_.committed().sheet(sheet.id) : nullptr) {
        return layAnew(*before, file, sheet);
    }
    joins ? addSheet(file, sheet) : laySheet(file, sheet);
}

/// What was done to the sheet since it was laid first holds on, as far as its picture is the same.
void Window::layAnew(const plan::Sheet& before, const std::filesystem::path& file, plan::Sheet sheet) {
    if (sheet.sha256 == before.sha256) {
        sheet.path = before.path;
        sheet.neatline = before.neatline;
    } else {
        sheet.path = std::filesystem::absolute(file).string();
    }
    sheet.asFilm = before.asFilm;
    sheet.stretch = sheet.stretch ? sheet.stretch : before.stretch;
    sheet.elevationPath = before.elevationPath;
    sheet.elevationUnit = before.elevationUnit;
    sheet.unknown = before.unknown;
    plan::PlanBuilder builder(work_.committed());
    builder.put(std::move(sheet));
    work_.commit(std::move(builder).build(), "lay the sheet anew by its marks");
}

void Window::takeTicksOf(const plan::SheetId& id) {
    const plan::SheetPtr film = work_.committed().sheet(id);
    if (!film) {
        return;
    }
    auto ticks = film::withTicksOf(*film, work_.committed());
    if (!ticks) {
        return say(outside_.say(ticks.error()));
    }
    plan::PlanBuilder builder(work_.committed());
    builder.registration(std::move(*ticks));
    work_.commit(std::move(builder).build(), "take that film's ticks");
    say(tr("All films have the ticks of that film now. Films printed before no longer fit."));
}

}  // namespace crosstick::window
