// Scans and photos that do not say where they lie.
#include <QFileDialog>

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

void Window::registerScan(const std::filesystem::path& file, const sheets::GivenFacts& given) {
    say({});
    const Uuid id = work_.newId();
    work_.errands().run(
        Lane::Makings, tr("Reading %1").arg(QString::fromStdString(file.filename().string())), GivingUp::Allowed,
        [file, reader = work_.reader()](Course& course) {
            sheets::Watch watch;
            watch.isStopped = [&course] { return course.isStopped(); };
            return reader.inspect(file, watch);
        },
        [this, file, given, id](const Result<sheets::FileReport>& report) {
            if (!report) {
                return say(outside_.say(report.error()));
            }
            if (pages_->currentWidget() != register_) {
                beforeRegister_ = pages_->currentWidget();
            }
            pages_->setCurrentWidget(register_);
            register_->open(file, *report, given, id);
            register_->setPurpose(beforeRegister_ == desk_ && work_.isOpen() ? registering::Purpose::JoinsAPlan
                                                                             : registering::Purpose::BeginsAPlan);
        });
}

void Window::leaveRegister() {
    if (pages_->currentWidget() == register_) {
        pages_->setCurrentWidget(beforeRegister_ != nullptr ? beforeRegister_ : start_);
    }
}

/// With a plan on the table the sheet joins the others; else it begins one.
void Window::laidByHand(const std::filesystem::path& file, const plan::Sheet& sheet) {
    const bool joins = beforeRegister_ == desk_ && work_.isOpen();
    leaveRegister();
    joins ? addSheet(file, sheet) : laySheet(file, sheet);
}

}  // namespace crosstick::window
