// Copy, paste, duplicate: by the system's clipboard, so from one running program to another, too.
#include <QApplication>
#include <QClipboard>
#include <QMimeData>

#include "core/files/exchange.h"
#include "core/plan/pasting.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

// Our own form says that every feature is ours; the text in it is the same GeoJSON that files have.
const QString kOwnForm = QStringLiteral("application/vnd.crosstick.measures+json");
const QString kGeoJson = QStringLiteral("application/geo+json");
constexpr qsizetype kMostBytes = qsizetype{8} << 20;
constexpr double kAside = 5e-3;  ///< metres on the film

QByteArray onClipboard() {
    const QMimeData* held = QApplication::clipboard()->mimeData();
    if (held == nullptr) {
        return {};
    }
    for (const QString& form : {kOwnForm, kGeoJson}) {
        if (held->hasFormat(form)) {
            return held->data(form);
        }
    }
    return held->text().toUtf8();
}

/// What is laid under the hand: the first point of the first route, else of the first measure that lies on the ground.
std::optional<geodesy::PlanePoint> firstPoint(const plan::Plan& what) {
    for (const plan::RoutePtr& route : what.routes()) {
        if (!route->vertices.empty()) {
            return route->vertices.front();
        }
    }
    std::optional<geodesy::PlanePoint> first;
    what.measures().forEach([&](const plan::MeasurePtr& measure) {
        if (!first && measure->anchor == plan::Anchor::Ground && !measure->points.empty()) {
            first = measure->points.front();
        }
    });
    return first;
}

}  // namespace

void Window::copy() {
    const plan::Plan part = plan::excerpt(work_.committed(), work_.selection());
    const QByteArray words = QByteArray::fromStdString(files::writeGeoJson(part));
    auto* held = new QMimeData;
    held->setData(kOwnForm, words);
    held->setData(kGeoJson, words);
    held->setText(QString::fromUtf8(words));
    QApplication::clipboard()->setMimeData(held);
    say(tr("Copied. Ctrl+V lays it under the hand, Ctrl+Shift+V in the same place on the working film."));
}

/// The clipboard is somebody else's: what it holds is looked at like any file, and bounded.
void Window::paste(Where where) {
    const QByteArray words = onClipboard();
    if (words.trimmed().isEmpty()) {
        say(tr("Nothing is copied. Choose a thing and press Ctrl+C first."));
        return;
    }
    if (words.size() > kMostBytes) {
        say(tr("What is copied is over 8 MB. Bring it in as a file."));
        return;
    }
    plan::PlanBuilder blank{plan::Plan{}};
    blank.id(work_.committed().id()).heading(work_.committed().heading());
    work_.errands().run(
        work::Lane::Makings, tr("Reading what is copied"), work::GivingUp::Allowed,
        [text = words.toStdString(), into = std::move(blank).build()](work::Course&) {
            return files::readGeoJson(text, into, {});
        },
        [this, where](const Result<files::Imported>& read) {
            if (!read) {
                say(tr("The clipboard holds no measures. %1").arg(outside_.say(read.error())));
            } else if (work_.isOpen()) {
                layInto(read->plan, where, "paste");
            }
        });
}

void Window::duplicate() {
    layInto(plan::excerpt(work_.committed(), work_.selection()), Where::Aside, "duplicate");
}

void Window::layInto(const plan::Plan& what, Where where, const std::string& caption) {
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (!film) {
        say(tr("There is no film to lay it on. Edit, New film makes one."));
        return;
    }
    const plan::SheetPtr sheet = work_.committed().groundSheet(*film);
    const Scale scale = film->scale ? *film->scale : sheet ? sheet->scale : Scale{};
    plan::Pasting how{film->id, Metres(0), Metres(0), [this] { return work_.newId(); }};
    const auto first = firstPoint(what);
    const auto hand = table_->pointedInPlan();
    if (where == Where::UnderTheHand && hand && first) {
        how.east = hand->easting - first->easting;
        how.north = hand->northing - first->northing;
    } else if (where != Where::SamePlace) {
        how.east = Metres(kAside * scale.denominator);
        how.north = Metres(-kAside * scale.denominator);
    }
    plan::Pasted done = plan::pasted(work_.committed(), what, how);
    if (done.items.empty()) {
        say(tr("What is copied holds no measures."));
        return;
    }
    const int count = static_cast<int>(done.items.size());
    const plan::ItemId last = done.items.back();  // a route where there is one
    work_.commit(std::move(done.plan), caption);
    work_.select(last);
    say(tr("%n things laid on %1, with numbers of their own.", nullptr, count).arg(QString::fromStdString(film->name)));
}

}  // namespace crosstick::window
