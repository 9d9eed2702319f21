// Files that are dropped on the window: each kind to its own deed.
#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>
#include <QUrl>

#include "core/files/exchange.h"
#include "ui/window/faults.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr std::uintmax_t kMostDrawing = std::uintmax_t{64} << 20;  ///< bytes of a GeoJSON that is read

enum class Dropped { Plan, Drawing, Sheet, Folder, Other };

Dropped kindOf(const std::filesystem::path& file) {
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored)) {
        return Dropped::Folder;
    }
    const QString end = QString::fromStdString(file.extension().string()).toLower();
    const auto isOneOf = [&end](std::initializer_list<const char*> ends) {
        return std::any_of(ends.begin(), ends.end(), [&](const char* one) { return end == QLatin1String(one); });
    };
    if (isOneOf({".gpkg"})) {
        return Dropped::Plan;
    }
    if (isOneOf({".geojson", ".json"})) {
        return Dropped::Drawing;
    }
    return isOneOf({".tif", ".tiff", ".png", ".jpg", ".jpeg", ".bmp", ".webp", ".pdf"}) ? Dropped::Sheet
                                                                                        : Dropped::Other;
}

Result<std::string> textOf(const std::filesystem::path& file) {
    std::error_code fault;
    const std::uintmax_t size = std::filesystem::file_size(file, fault);
    std::ifstream in(file, std::ios::binary);
    if (fault || !in) {
        return fail(kDropUnread, {{"file", file.string()}});
    }
    if (size > kMostDrawing) {
        return fail(kDropTooLarge, {{"file", file.string()}, {"most", std::int64_t{kMostDrawing >> 20}}});
    }
    return std::string(std::istreambuf_iterator<char>(in), {});
}

}  // namespace

void Window::takeFile(const std::filesystem::path& file) {
    const QString name = QString::fromStdString(file.filename().string());
    switch (kindOf(file)) {
        case Dropped::Plan:
            return openPlan(file);
        case Dropped::Drawing:
            return drawFrom(file);
        case Dropped::Sheet:
            return work_.isOpen() ? layBeside(file) : openSheet(file);
        case Dropped::Folder:
            return say(tr("%1 is a folder. Drop one file out of it.").arg(name));
        case Dropped::Other:
            break;
    }
    say(tr("%1 is neither plan nor sheet nor drawing. Plans end in .gpkg, sheets and scans in .tif, .png, .jpg or "
           ".pdf, drawings in .geojson.")
            .arg(name));
}

/// What a file draws comes onto the working film, as one step.
void Window::drawFrom(const std::filesystem::path& file) {
    const plan::FilmPtr film =
        work_.isOpen() && work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (!film) {
        return say(tr("A drawing needs a film to lie on. Lay a sheet or take up a plan first."));
    }
    const QString name = QString::fromStdString(file.filename().string());
    work_.errands().run(
        work::Lane::Makings, tr("Reading %1").arg(name), work::GivingUp::Allowed,
        [file, plan = work_.committed(), onto = film->name](work::Course&) {
            return textOf(file).and_then([&](const std::string& text) {
                return files::readGeoJson(text, plan, {onto}).map([&](files::Imported imported) {
                    return std::pair(plan, std::move(imported));
                });
            });
        },
        [this, name](const Result<std::pair<plan::Plan, files::Imported>>& drawn) {
            if (!drawn) {
                return say(outside_.say(drawn.error()));
            }
            const auto& [before, imported] = *drawn;
            if (!work_.isOpen() || !(work_.committed() == before)) {
                return say(tr("The plan has changed while %1 was read. Drop it again.").arg(name));
            }
            work_.commit(imported.plan, "draw from a file");
            say(tr("%1: %2 measures, %3 routes drawn.").arg(name).arg(imported.measures).arg(imported.routes));
        });
}

void Window::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasUrls()) {
        event->acceptProposedAction();
    }
}

/// One at a time: what a file does may need an answer first.
void Window::dropEvent(QDropEvent* event) {
    const QList<QUrl> urls = event->mimeData()->urls();
    if (urls.isEmpty()) {
        return;
    }
    if (urls.size() > 1) {
        return say(tr("%1 files at once. Drop one; the next when it lies.").arg(urls.size()));
    }
    if (!urls.front().isLocalFile()) {
        return say(tr("%1 is no file on this computer. Fetch it first, then drop it.").arg(urls.front().toString()));
    }
    event->acceptProposedAction();
    takeFile(urls.front().toLocalFile().toStdString());
}

}  // namespace crosstick::window
