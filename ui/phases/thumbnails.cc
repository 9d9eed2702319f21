#include "ui/phases/thumbnails.h"

#include <algorithm>
#include <utility>

#include <QPainter>

#include "core/sheets/raster.h"
#include "ui/press/painter.h"
#include "ui/table/behind.h"
#include "ui/table/film_painter.h"
#include "ui/table/tints.h"

namespace crosstick::phases {
namespace {

constexpr double kMargin = 4;
constexpr double kPen = 1.2;   ///< logical pixels: no line is thinner
constexpr double kTick = 3.5;  ///< of a tick's arms
constexpr Scale kClosest{5000};
constexpr double kHalf = 0.5;

/// What of a drawing is still told apart when it is that small: its lines and fills, none too thin to be seen.
/// @param pixel  logical pixels to the millimetre
drawing::Drawing coarse(const drawing::Drawing& drawing, double pixel) {
    drawing::Drawing kept;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            drawing::Stroke thick = *stroke;
            thick.width = std::max(thick.width, kPen / pixel);
            kept.marks.emplace_back(std::move(thick));
        } else if (const auto* fill = std::get_if<drawing::Fill>(&mark)) {
            kept.marks.emplace_back(*fill);
        }
    }
    return kept;
}

table::View viewOf(const table::GridBox& ground, QSize size) {
    return table::View::fitting(ground, {0, 0, static_cast<double>(size.width()), static_cast<double>(size.height())},
                                kMargin, table::zoomFor(kClosest));
}

QImage blank(QSize size, double ratio) {
    QImage image(QSize(qRound(size.width() * ratio), qRound(size.height() * ratio)),
                 QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(ratio);
    image.fill(Qt::transparent);
    return image;
}

void paintTicks(QPainter& painter, const plan::Plan& plan, const table::View& view, const QColor& ink) {
    if (!plan.registration()) {
        return;
    }
    painter.setPen(QPen(ink, 1));
    for (const geodesy::PlanePoint tick : plan.registration()->ticks) {
        const table::Spot spot = view.spot(tick);
        const QPointF at(std::floor(spot.x) + kHalf, std::floor(spot.y) + kHalf);
        painter.drawLine(at - QPointF(kTick, 0), at + QPointF(kTick, 0));
        painter.drawLine(at - QPointF(0, kTick), at + QPointF(0, kTick));
    }
}

QImage paintedSmall(const ThumbnailOrder& order, const table::FilmInk& film, const table::GridBox& ground,
                    const press::Faces& faces, const work::FilmLook& look) {
    QImage image = blank(order.size, order.deviceRatio);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    const table::View view = viewOf(ground, order.size);
    const press::Inks inks = table::tinted(table::palette(order.theme).pens, look.tint, order.theme);
    paintTicks(painter, order.scene.plan, view, table::palette(order.theme).inkTwo);
    painter.setOpacity(look.strength);
    const QTransform toPicture = table::filmTransform(view, film.frame);
    painter.setTransform(toPicture, true);
    const double pixel = std::hypot(toPicture.m11(), toPicture.m12());
    for (const symbols::EngravedItem& item : film.engraved->items) {
        press::paint(painter, coarse(item.drawing, pixel),
                     {faces, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
    }
    return image;
}

/// The ground that all pictures show, so that one film's can be laid beside another's.
std::optional<table::GridBox> groundOf(const plan::Plan& plan, const std::vector<table::FilmInk>& films) {
    if (const auto& registration = plan.registration()) {
        return table::GridBox{registration->southWest, registration->northEast};
    }
    return table::inkedGround(films);
}

bool isSame(const table::GridBox& a, const table::GridBox& b) {
    return a.southWest == b.southWest && a.northEast == b.northEast;
}

}  // namespace

void ThumbnailWorker::make(const ThumbnailOrder& order) {
    if (order.number != newest_) {
        return;
    }
    if (!faces_) {
        auto faces = press::Faces::open(share_ / "faces", press::Faces::WideFace::WhenNeeded);
        if (!faces) {
            return;  // the table says so
        }
        faces_.emplace(std::move(*faces));
    }
    if (size_ != order.size || deviceRatio_ != order.deviceRatio || theme_ != order.theme) {
        painted_.clear();
        sheet_.clear();
        size_ = order.size;
        deviceRatio_ = order.deviceRatio;
        theme_ = order.theme;
    }
    makeSheet(order);
    makeFilms(order);
}

void ThumbnailWorker::makeFilms(const ThumbnailOrder& order) {
    std::vector<table::FilmInk> films;
    table::Scene alone = order.scene;  // each by itself: no film above takes ink from it
    alone.working.reset();
    for (const plan::FilmId& film : order.scene.films) {
        if (order.number != newest_) {
            return;
        }
        alone.films = {film};
        if (auto ink = inker_.ink(alone); ink && !ink->empty()) {
            films.push_back(std::move(ink->front()));
        }
    }
    const auto ground = groundOf(order.scene.plan, films);
    for (const table::FilmInk& film : films) {
        if (order.number != newest_ || !ground) {
            return;
        }
        const auto look = order.looks.find(film.film->id);
        const work::FilmLook lies = look == order.looks.end() ? work::FilmLook{} : look->second;
        const auto before = painted_.find(film.film->id);
        if (before != painted_.end() && before->second.engraved == film.engraved && before->second.look == lies &&
            isSame(before->second.ground, *ground)) {
            continue;
        }
        painted_.insert_or_assign(film.film->id, Painted{film.engraved, lies, *ground});
        Q_EMIT made(film.film->id, paintedSmall(order, film, *ground, *faces_, lies));
    }
}

void ThumbnailWorker::makeSheet(const ThumbnailOrder& order) {
    if (order.sheet == sheet_) {
        return;
    }
    sheet_ = order.sheet;
    if (sheet_.empty()) {
        Q_EMIT madeSheet({});
        return;
    }
    const auto raster = sheets::Raster::open(sheet_);
    if (!raster) {
        Q_EMIT madeSheet({});
        return;
    }
    const int wide = qRound(order.size.width() * order.deviceRatio);
    const int high = qRound(order.size.height() * order.deviceRatio);
    // As much from the middle as has the picture's shape.
    const double share =
        std::min(static_cast<double>(raster->columns()) / wide, static_cast<double>(raster->rows()) / high);
    const int columns = std::max(1, static_cast<int>(share * wide));
    const int rows = std::max(1, static_cast<int>(share * high));
    const auto pixels =
        raster->read({(raster->columns() - columns) / 2, (raster->rows() - rows) / 2, columns, rows}, wide, high);
    if (!pixels) {
        Q_EMIT madeSheet({});
        return;
    }
    QImage image(wide, high, QImage::Format_RGB32);
    image.setDevicePixelRatio(order.deviceRatio);
    for (int y = 0; y < high; ++y) {
        auto* row = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < wide; ++x) {
            const QRgb day = pixels->rgb[static_cast<std::size_t>(y * wide + x)] | 0xff000000U;
            row[x] = order.theme == table::Theme::Night ? table::byNight(day) : day;
        }
    }
    Q_EMIT madeSheet(image);
}

Thumbnails::Thumbnails(const std::filesystem::path& share, QObject* parent)
    : QObject(parent), worker_(new ThumbnailWorker(share, newest_)) {
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    connect(&thread_, &QThread::started, worker_, &table::stepBehind);
    connect(this, &Thumbnails::wanted, worker_, &ThumbnailWorker::make);
    connect(worker_, &ThumbnailWorker::made, this, [this](const plan::FilmId& film, const QImage& picture) {
        pictures_[film] = picture;
        Q_EMIT changed(film);
    });
    connect(worker_, &ThumbnailWorker::madeSheet, this, [this](const QImage& picture) {
        sheet_ = picture;
        Q_EMIT sheetChanged();
    });
    thread_.start();
}

Thumbnails::~Thumbnails() {
    leave();
    thread_.quit();
    thread_.wait();
}

void Thumbnails::order(ThumbnailOrder order) {
    order.number = ++newest_;
    Q_EMIT wanted(order);
}

void Thumbnails::leave() {
    ++newest_;
}

QImage Thumbnails::of(const plan::FilmId& film) const {
    const auto found = pictures_.find(film);
    return found == pictures_.end() ? QImage() : found->second;
}

}  // namespace crosstick::phases
